import type { Lathe } from '../lathe/lathe.ts'
import type { Form } from '../moves/form.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import { setUp } from './bench.ts'
import { differ } from './form/compare.ts'
import { finished, type Progress } from './replay.ts'
import { carryOut } from './run.ts'

/** The part after one move that took metal. `move`: index in the operation. */
export type Pass = { readonly move: number; readonly form: Form }

/** The part after every move of an operation that changes it, as it is cut whatever the backlash is. d = −radius, pm. */
export const passesOf = (lathe: Lathe, setup: Setup, operation: Operation, progress: Progress): readonly Pass[] => {
  const before = { ...progress, allowed: finished(progress.allowed, operation) }
  const bench = setUp(lathe, setup, operation, before, { rules: true, shift: null })
  const passes: Pass[] = []
  let last: Form = before.surely
  operation.moves.forEach((move, index) => {
    carryOut(bench, move, index)
    if (differ(bench.surely, last) === null) return
    last = [...bench.surely]
    passes.push({ move: index, form: last })
  })
  return passes
}
