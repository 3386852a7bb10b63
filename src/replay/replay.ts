import type { Lathe } from '../lathe/lathe.ts'
import type { Form } from '../moves/form.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Fault, OperationTrace, Trace } from '../moves/trace.ts'
import { cutInto } from './form/insert.ts'
import { runOperation } from './run.ts'

/**
 * Carries out every move on a model lathe that does not know why it is made, for every lost motion from none to the stated one at once.
 * The operations are done in order on one part: each starts from the forms the one before has left. Lengths in pm.
 */
export const replay = (lathe: Lathe, setup: Setup, operations: readonly Operation[]): Trace => {
  const done: OperationTrace[] = []
  const faults: Fault[] = []
  let allowed = setup.stock
  operations.forEach((operation, index) => {
    const before = done.at(-1) ?? { surely: setup.stock, possibly: setup.stock }
    allowed = finished(allowed, operation)
    const run = runOperation(lathe, setup, operation, { ...before, allowed }, { rules: true, shift: null })
    done.push(run.trace)
    faults.push(...run.faults.map((fault) => ({ ...fault, operation: index })))
  })
  return { operations: done, faults }
}

/** The part as it may be cut once this operation is done: what was allowed before, and its wanted form. */
const finished = (allowed: Form, operation: Operation): Form => {
  const part = [...allowed]
  cutInto(part, operation.wanted)
  return part
}
