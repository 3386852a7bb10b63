import type { Operation, Slide } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { replayNext } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import { finishStep, type Shop, standingAlong, stepTravel } from './measured.ts'
import { anyAcross, fromHeadstock, slideOf, withTool } from './width.ts'

/**
 * Metal that the last measuring finds left can be taken off by the finishing pass once more, a mark further for each mark's worth. Indexes of
 * moves; null where the replay of just that (one mark left, one mark more) does not end at the sizes that were planned.
 */
export type Again = {
  /** The last measuring. */
  readonly end: number
  readonly from: number
  readonly to: number
  /** What one readable step of the finishing slide is worth on the diameter, pm; null where that is not proved. */
  readonly perStep: Length | null
  /** The feed across, and what one readable step of it is worth in width. */
  readonly across: { readonly index: number; readonly slide: Slide; readonly perStep: Length } | null
}

export const againFor = (shop: Shop, planned: OperationTrace): Again | null => {
  const { operation, stop, lathe } = shop
  const { moves } = operation
  const end = moves.findLastIndex(({ action, purpose }) => action === 'measure' && purpose === 'expect-finish')
  const to = moves.findLastIndex(
    ({ action, slide }, index) => index < end && action === 'back-out' && cuts(index, slide),
  )
  if (end < 0 || to < 0) return null
  const perStep = 2 * finishStep(shop)
  const deeper = proved(shop, planned, end, large(standingAlong(shop, perStep), perStep), stop.finishes)
  const index = anyAcross(operation, stop.at)
  const slide = slideOf(operation, index)
  const step = stepTravel(slide === 'carriage' ? lathe.carriage! : lathe.compound.scale)
  const wider =
    index !== null && !fromHeadstock(operation) && proved(shop, planned, end, withTool(operation, -step), [index])
  if (!deeper && !wider) return null
  const across = wider ? { index: index!, slide, perStep: step } : null
  return { end, from: stop.at + 1, to, perStep: deeper ? perStep : null, across }

  function cuts(index: number, slide: string | undefined): boolean {
    return slide === 'cross-feed' && index > stop.finishes.at(-1)! && moves[index]!.purpose !== 'clear-to-measure'
  }
}

/** Everything came out large by one step of the dial. */
const large = (operation: Operation, by: Length): Operation => ({
  ...operation,
  zero: { ...operation.zero, diameter: operation.zero.diameter + by },
})

const SAME: Length = 1000

/** Finished as written on work that is off by a step, measured, and finished again with these moves one step further. */
const proved = (
  { lathe, setup, progress, stop }: Shop,
  planned: OperationTrace,
  end: number,
  off: Operation,
  further: readonly number[],
): boolean => {
  const again = off.moves
    .slice(stop.at + 1, end + 1)
    .map((move, i) => (further.includes(stop.at + 1 + i) ? { ...move, count: move.count! + 1 } : move))
  const moves = [...off.moves.slice(0, end + 1), ...again, ...off.moves.slice(end + 1)]
  const { trace, faults } = replayNext(lathe, setup, progress, { ...off, moves }, 0)
  if (faults.some(({ move }) => move < 0 || move > end)) return false
  return trace.sizes.every(({ id, surely }, i) => {
    const was = planned.sizes[i]!.surely
    return (id !== 'width' && id !== 'bottomDiameter') || Math.abs((surely ?? 0) - (was ?? 0)) <= SAME
  })
}
