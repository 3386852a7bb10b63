import { stepTravel } from '../dials/travel.ts'
import type { Operation, Slide } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { replayNext } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import { finishStep, type Shop, standingAlong } from './measured.ts'
import { sinceTheStop } from './since-stop.ts'
import { anyAcross, fromHeadstock, placesBefore, slideOf, withTool } from './width.ts'

/**
 * If the last measuring finds metal still to cut, the finishing pass is done again, one mark further for each mark's worth of metal. Null if a replay
 * of that (one mark's worth left, one mark further) does not end at the planned sizes. Numbers are indexes of moves.
 */
export type Again = {
  /** The last measuring. */
  readonly end: number
  readonly from: number
  readonly to: number
  /** What one readable step of the finishing slide changes on the diameter, pm; null if no replay has checked it. */
  readonly perStep: Length | null
  /** The moves that widen: the feed across; or, beside a shoulder on the headstock side, the places where it begins (`by` is -1: further back). */
  readonly across: {
    readonly indexes: readonly number[]
    readonly by: 1 | -1
    readonly slide: Slide
    readonly perStep: Length
  } | null
  /** Feeds to the scribed lines by eye, which are done again. */
  readonly toLines: readonly number[]
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
  const shallow = large(standingAlong(shop, perStep), perStep)
  const deeper = proved(shop, planned, end, shallow, perStep, stop.finishes, 1)
  const index = anyAcross(operation, stop.at)
  const slide = slideOf(operation, index)
  const step = stepTravel(slide === 'carriage' ? lathe.carriage! : lathe.compound.scale)
  const by = fromHeadstock(operation) ? -1 : 1
  const indexes = index === null ? [] : by === 1 ? [index] : placesBefore(operation, stop.at, index)
  const narrow = by === 1 ? withTool(operation, -step) : shortBy(operation, indexes)
  const wider = indexes.length > 0 && proved(shop, planned, end, narrow, 0, indexes, by)
  const across = wider ? ({ indexes, by, slide, perStep: step } as const) : null
  const lines = moves.flatMap(({ action, place }, i) =>
    i > stop.at && action === 'feed-across' && place !== undefined ? [i] : [],
  )
  const toLines = lines.length > 0 && proved(shop, planned, end, operation, 0, [], 1) ? lines : []
  if (!deeper && !wider && toLines.length === 0) return null
  return { end, from: stop.at + 1, to, perStep: deeper ? perStep : null, across, toLines }

  function cuts(index: number, slide: string | undefined): boolean {
    return slide === 'cross-feed' && index > stop.finishes.at(-1)! && moves[index]!.purpose !== 'clear-to-measure'
  }
}

/** Begins one step late. The corner that was brought to the shoulder, and the blank beside it, stay where they were. */
const shortBy = (operation: Operation, indexes: readonly number[]): Operation => ({
  ...operation,
  moves: operation.moves.map((move, i) => (indexes.includes(i) ? { ...move, count: move.count! + 1 } : move)),
})

/** Everything is larger by one step of the dial. */
const large = (operation: Operation, by: Length): Operation => ({
  ...operation,
  off: { along: operation.off?.along ?? 0, deep: (operation.off?.deep ?? 0) - by / 2 },
})

const SAME: Length = 1000

/**
 * Replays the finish as written on work that is off by one step, then the finish again with these moves one step further. `larger`: how much larger
 * than expected the bottom is at the stop, pm of diameter.
 */
const proved = (
  shop: Shop,
  planned: OperationTrace,
  end: number,
  off: Operation,
  larger: Length,
  further: readonly number[],
  by: 1 | -1,
): boolean => {
  const { lathe, setup, progress, stop } = shop
  const again = off.moves
    .slice(stop.at + 1, end + 1)
    .map((move, i) => (further.includes(stop.at + 1 + i) ? { ...move, count: move.count! + by } : move))
  const moves = [...off.moves.slice(0, end + 1), ...again, ...off.moves.slice(end + 1)]
  const twice: Operation = { ...off, moves }
  const { trace, faults } = sinceTheStop(shop, twice, larger) ?? replayNext(lathe, setup, progress, twice, 0)
  const known = faults.length === 0 ? new Set() : onForm(shop)
  if (faults.some(({ move, kind }) => move > end || (move < 0 && !known.has(kind)))) return false
  return trace.sizes.every(({ id, surely }, i) => {
    const was = planned.sizes[i]!.surely
    return (id !== 'width' && id !== 'bottomDiameter') || Math.abs((surely ?? 0) - (was ?? 0)) <= SAME
  })
}

/** Faults that the form has without this too: finished by a measured bottom it may differ from the drawing, within the limits. */
const onForm = ({ lathe, setup, progress, operation }: Shop): ReadonlySet<string> => {
  const { faults } = replayNext(lathe, setup, progress, operation, 0)
  return new Set(faults.flatMap(({ move, kind }) => (move < 0 ? [kind] : [])))
}
