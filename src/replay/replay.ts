import type { Lathe } from '../lathe/lathe.ts'
import type { Form } from '../moves/form.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Fault, OperationTrace, Trace } from '../moves/trace.ts'
import { cutInto } from './form/insert.ts'
import { kept } from './form/kept.ts'
import { runOperation } from './run.ts'

/** The part so far: its forms, and how far it may be cut. `startOf` is the part before the first operation. */
export type Progress = { readonly surely: Form; readonly possibly: Form; readonly allowed: Form }
export const startOf = ({ stock }: Setup): Progress => ({ surely: stock, possibly: stock, allowed: stock })

/**
 * Makes every move on a model lathe that does not know why it is made, for every amount of lost motion from none to the stated one at once.
 * The operations are done in order on one part: each starts from what the one before has left. Lengths in pm.
 */
export const replay = (lathe: Lathe, setup: Setup, operations: readonly Operation[]): Trace => {
  const done: OperationTrace[] = []
  const faults: Fault[] = []
  let progress = startOf(setup)
  operations.forEach((operation, index) => {
    const run = replayNext(lathe, setup, progress, operation, index)
    progress = run.after
    done.push(run.trace)
    faults.push(...run.faults)
  })
  return { operations: done, faults }
}

/** One more operation on a part as it is; `index` is its number in the faults. */
export const replayNext = (lathe: Lathe, setup: Setup, progress: Progress, operation: Operation, index: number) => {
  const allowed = finished(progress.allowed, operation)
  const { trace, faults } = runOperation(
    lathe,
    setup,
    operation,
    { ...progress, allowed },
    { rules: true, shift: null },
  )
  const left: Progress = { surely: trace.surely, possibly: trace.possibly, allowed }
  return { trace, faults: faults.map((fault): Fault => ({ ...fault, operation: index })), after: left }
}

/** How far the part may be cut once this operation is done: what was allowed before, and the wanted form of this one. */
export const finished = (allowed: Form, { wanted }: Operation): Form =>
  ofBoth(allowed, wanted, [], () => {
    const part = [...allowed]
    cutInto(part, wanted)
    return part
  })
const ofBoth = kept<Form>()
