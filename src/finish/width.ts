import { worn } from '../budget/worn.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { correctedFor, type Shop, stepTravel } from './measured.ts'

/** Two places are one within a micrometer. */
const SAME: Length = 1_000_000

/**
 * What a groove measures over is its tool: the flat of the edge is so much wider than the tool was measured. Where a corner was brought to a
 * shoulder on the headstock side, that corner stands where it stood, and the reference point moves.
 */
export const withTool = (operation: Operation, wider: Length): Operation => {
  if (wider === 0) return operation
  const { zero } = operation
  const fromEnd = zero.fromEnd - (fromHeadstock(operation) ? wider : 0)
  return { ...operation, edge: worn(operation.edge, wider), zero: { ...zero, fromEnd } }
}

/** The same moves with the last feed across going `steps` further, or, from a shoulder, beginning so much further on. */
export const withAcross = (operation: Operation, at: number, steps: number): Operation => {
  const across = feedAcross(operation, at)
  if (across === null || steps === 0) return operation
  const moved = (index: number): boolean => (fromHeadstock(operation) ? index > at && index < across : index === across)
  return {
    ...operation,
    moves: operation.moves.map((move, index) =>
      moved(index) && move.slide === 'compound' && typeof move.count === 'number'
        ? { ...move, count: move.count + steps }
        : move,
    ),
  }
}

/** How far the far end of the feed across is moved for the width to come nearest to the drawing's; a tie leaves metal. */
export const stepsAcross = (shop: Shop, measured: Length, wider: Length): number => {
  const aim = shop.operation.dimensions.find(({ id }) => id === 'width')?.aim
  if (wider === 0 || aim === undefined || feedAcross(shop.operation, shop.stop.at) === null) return 0
  const exact = -wider / stepTravel(shop.lathe.compound.scale)
  // From a shoulder the near end moves: a wider tool begins further on.
  const sense = fromHeadstock(shop.operation) ? -1 : 1
  const choices = [...new Set([Math.floor(exact), Math.ceil(exact)])].map((steps) => steps * sense)
  const widths = choices.map((steps) => {
    const operation = withAcross(shop.operation, shop.stop.at, steps)
    const { trace } = correctedFor({ ...shop, operation }, measured)
    return { steps, width: trace.sizes.find(({ id }) => id === 'width')?.surely ?? Number.POSITIVE_INFINITY }
  })
  const narrowFirst = widths.sort((a, b) => a.width - b.width)
  return narrowFirst.reduce((best, one) => (Math.abs(one.width - aim) < Math.abs(best.width - aim) - 1000 ? one : best))
    .steps
}

export const feedAcross = (operation: Operation, at: number): number | null => {
  const across = operation.moves.flatMap(({ action, slide }, index) =>
    index > at && action === 'feed-across' && slide === 'compound' ? [index] : [],
  )
  return across.length === 1 && operation.angle === 0 ? across[0]! : null
}

export const fromHeadstock = ({ placedBy, zero, edge, region }: Operation): boolean =>
  placedBy === 'touch' && Math.abs(zero.fromEnd + edge.pieces.at(-1)!.to - region.to) < SAME
