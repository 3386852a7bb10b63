import type { Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'

/** The stop to measure before the finishing pass, and the moves that finish in depth after it. Indexes of moves. */
export type Stop = {
  readonly at: number
  readonly finishes: readonly number[]
  /** The slide that makes them: the compound where a V is fed down its flank. */
  readonly by: 'cross-feed' | 'compound'
  /** The slide that roughed: the compound also where the cross-feed finishes straight in from there. */
  readonly roughedBy: 'cross-feed' | 'compound'
  /** What the replay expects the bottom diameter to measure at the stop, pm. */
  readonly expected: Length
}

/** Null if no finish in depth comes after a measuring, or if there is no bottom to measure. */
export const stopOf = (operation: Operation, trace: OperationTrace): Stop | null => {
  const { moves, dimensions } = operation
  const at = moves.findLastIndex(({ action, purpose }) => action === 'measure' && purpose === 'expect-rough')
  if (at < 0 || dimensions.every(({ id }) => id !== 'bottomDiameter')) return null
  const expected = trace.at[at]?.find(({ id }) => id === 'bottomDiameter')?.surely ?? null
  const down = moves.some(({ action, slide }, i) => i < at && action === 'feed-in' && slide === 'compound')
  const roughedBy = down ? 'compound' : 'cross-feed'
  const finishedBy = (by: Stop['by']): Stop | null => {
    const finishes = moves.flatMap(({ action, slide, purpose }, index) =>
      index > at && action === 'feed-in' && slide === by && purpose === 'finish' ? [index] : [],
    )
    return expected === null || finishes.length === 0 ? null : { at, finishes, by, roughedBy, expected }
  }
  return finishedBy('cross-feed') ?? finishedBy('compound')
}

/** The bottom diameter of the drawing, with its limits or those that follow from the depth, pm. */
export const bottomWanted = (
  operation: Operation,
): { readonly aim: Length; readonly limits: readonly [Length, Length] | null } => {
  const bottom = operation.dimensions.find(({ id }) => id === 'bottomDiameter')!
  const depth = operation.dimensions.find(({ id }) => id === 'depth')
  const byDepth = depth?.limits ?? null
  if (bottom.limits !== null || byDepth === null) return { aim: bottom.aim, limits: bottom.limits }
  return { aim: bottom.aim, limits: [operation.surface - 2 * byDepth[1], operation.surface - 2 * byDepth[0]] }
}
