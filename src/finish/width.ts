import { worn } from '../budget/worn.ts'
import { stepTravel } from '../dials/travel.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Edge } from '../moves/form.ts'
import type { Operation, Slide } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Corrected, correctedFor, type Shop } from './measured.ts'
import { bottomWanted } from './stop.ts'

/**
 * What a groove measures over is its tool: the flat of the edge is so much wider than the tool was measured. Where a corner was brought to a
 * shoulder on the headstock side, that corner stands where it stood, and the reference point moves.
 */
export const withTool = (operation: Operation, wider: Length): Operation => {
  if (wider === 0) return operation
  const edge = worn(operation.edge, wider)
  return { ...operation, edge: fromHeadstock(operation) ? besideShoulder(edge, wider) : edge }
}

/** The corner touched the shoulder, so nothing of the blank behind it stands out beyond that corner: the blank is where it was beside it. */
const besideShoulder = (edge: Edge, wider: Length): Edge => {
  const { from, to } = edge.shank
  return { ...edge, shank: { from: Math.min(from, from + wider), to: to + wider } }
}

/**
 * The same moves with the last feed across going `steps` further, or, from a shoulder, beginning so much further on. Where the compound is
 * swung the last place of the finish moves, and the cross-feed there makes up for what that does to the depth.
 */
export const withAcross = ({ lathe, operation, stop }: Shop, steps: number): Operation => {
  const across = anyAcross(operation, stop.at)
  const end = across === null ? endPlace(operation, stop) : null
  if (steps === 0 || (across === null && end === null)) return operation
  const moved = (index: number): boolean => {
    if (across === null) return end!.brings.includes(index)
    return fromHeadstock(operation) ? index > stop.at && index < across : index === across
  }
  return {
    ...operation,
    moves: operation.moves.map((move, index) => {
      if (moved(index) && move.slide === slideOf(operation, across) && typeof move.count === 'number')
        return { ...move, count: move.count + steps }
      return end?.cuts.includes(index) === true
        ? { ...move, count: crossCount(lathe, operation, end.reading + steps) }
        : move
    }),
  }
}

/** The cross-feed's reading for the drawing's bottom with a swung compound at a reading, rounded once; a tie leaves metal. */
const crossCount = (lathe: Lathe, operation: Operation, compound: number): number => {
  const shift = compound * stepTravel(lathe.compound.scale) * Math.sin((operation.angle * Math.PI) / 180)
  const depth = (operation.touch.diameter - bottomWanted(operation).aim) / 2
  return Math.ceil((depth - shift) / stepTravel(lathe.crossFeed) - 0.5 - 1e-6)
}

/** A feed across moved by so many readable steps, and what it finishes at. */
export type Across = { readonly steps: number; readonly corrected: Corrected }

/** How far the far end of the feed across is moved for the width to come nearest to the drawing's; a tie leaves metal. */
export const stepsAcross = (shop: Shop, measured: Length, wider: Length): Across => {
  const { operation, stop } = shop
  const made = new Map<number, Across>()
  const movedBy = (steps: number): Across => {
    const known = made.get(steps)
    if (known !== undefined) return known
    const one = { steps, corrected: correctedFor({ ...shop, operation: withAcross(shop, steps) }, measured) }
    made.set(steps, one)
    return one
  }
  const aim = operation.dimensions.find(({ id }) => id === 'width')?.aim
  const across = anyAcross(operation, stop.at)
  const moves = across !== null || endPlace(operation, stop) !== null
  if (wider === 0 || aim === undefined || !moves) return movedBy(0)
  const byCarriage = slideOf(operation, across) === 'carriage'
  const along = byCarriage ? 1 : Math.cos((operation.angle * Math.PI) / 180)
  const scale = byCarriage ? shop.lathe.carriage! : shop.lathe.compound.scale
  const exact = -wider / (stepTravel(scale) * along)
  // From a shoulder the near end moves: a wider tool begins further on.
  const sense = fromHeadstock(operation) ? -1 : 1
  const choices = [...new Set([Math.floor(exact), Math.ceil(exact)])].map((steps) => movedBy(steps * sense))
  const narrowFirst = choices.sort((a, b) => widthOf(a) - widthOf(b))
  const best = narrowFirst.reduce((one, other) =>
    Math.abs(widthOf(other) - aim) < Math.abs(widthOf(one) - aim) - SLACK ? other : one,
  )
  return best.steps * sense < 0 ? asFarAsRoughed(best, movedBy) : best
}

/** A width that stands to a nanometer is the same. */
const SLACK: Length = 1000

const widthOf = ({ corrected }: Across): Length =>
  corrected.trace.sizes.find(({ id }) => id === 'width')?.surely ?? Number.POSITIVE_INFINITY

/**
 * A wall that roughing has cut already does not come back by stopping short of it: that would only leave a step at the floor. So the reading
 * stays as near to the written one as it can without cutting more.
 */
const asFarAsRoughed = (best: Across, movedBy: (steps: number) => Across): Across => {
  const same = (other: Across): boolean => Math.abs(widthOf(other) - widthOf(best)) <= SLACK
  const written = movedBy(0)
  if (same(written)) return written
  let found = best
  for (;;) {
    const next = movedBy(found.steps - Math.sign(found.steps))
    if (next.steps === 0 || !same(next)) return found
    found = next
  }
}

/** Moves that bring the tool to one place of the finish, the compound's reading there, and the finishes made at it. Indexes of moves. */
type EndPlace = { readonly brings: readonly number[]; readonly reading: number; readonly cuts: readonly number[] }

/** Where a swung compound finishes at several places by the cross-feed: the last of them; from a shoulder the first. */
const endPlace = (operation: Operation, { at, by, finishes }: Shop['stop']): EndPlace | null => {
  if (operation.angle === 0 || by !== 'cross-feed' || finishes.length < 2) return null
  const { moves } = operation
  const along = moves.flatMap(({ slide, count }, i) =>
    i > at && i < finishes.at(-1)! && slide === 'compound' && typeof count === 'number' ? [i] : [],
  )
  const own = fromHeadstock(operation)
  const between = along.filter((i) => (own ? i < finishes[0]! : i > finishes.at(-2)!))
  const brings = own ? between : between.filter((i) => moves[i]!.action === 'shift')
  if (brings.length === 0) return null
  const next = own ? (along.find((i) => i > finishes[0]!) ?? moves.length) : moves.length
  const cuts = finishes.filter((i) => i > brings.at(-1)! && i < next)
  return cuts.length === finishes.length ? null : { brings, reading: moves[brings.at(-1)!]!.count!, cuts }
}

/** By the compound, or by the carriage where it is read on a dial or an indicator; what is fed to a line by eye has no reading to move. */
export const anyAcross = (operation: Operation, at: number): number | null => {
  const compound = feedAcross(operation, at)
  if (compound !== null) return compound
  const carriage = operation.moves.flatMap(({ action, slide, count }, index) =>
    index > at && action === 'feed-across' && slide === 'carriage' && typeof count === 'number' ? [index] : [],
  )
  if (operation.cusp !== undefined) return null
  return carriage.length === 1 ? carriage[0]! : null
}

export const slideOf = ({ moves }: Operation, across: number | null): Slide =>
  across === null ? 'compound' : (moves[across]!.slide ?? 'compound')

/** Where fillets are stepped along, their places have to do with both walls: a width alone moves none of them. */
export const feedAcross = (operation: Operation, at: number): number | null => {
  if (operation.cusp !== undefined) return null
  const across = operation.moves.flatMap(({ action, slide }, index) =>
    index > at && action === 'feed-across' && slide === 'compound' ? [index] : [],
  )
  return across.length === 1 && operation.angle === 0 ? across[0]! : null
}

export const fromHeadstock = ({ placing }: Operation): boolean =>
  placing.point === 'headstock-corner' && 'face' in placing.against
