import { worn } from '../budget/worn.ts'
import { stepTravel } from '../dials/travel.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Edge } from '../moves/form.ts'
import type { Operation, Slide } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Corrected, correctedFor, type Shop } from './measured.ts'
import { bottomWanted } from './stop.ts'

/**
 * A groove that is too wide has a tool that is wider than stated: the flat of the edge is wider by the same amount. If a corner was brought to a
 * shoulder on the headstock side, that corner stays where it was, and the reference point moves.
 */
export const withTool = (operation: Operation, wider: Length): Operation => {
  if (wider === 0) return operation
  const edge = worn(operation.edge, wider)
  return { ...operation, edge: fromHeadstock(operation) ? besideShoulder(edge, wider) : edge }
}

/** The corner touched the shoulder, so the blank does not stick out beyond that corner: on that side it stays where it was. */
const besideShoulder = (edge: Edge, wider: Length): Edge => {
  const { from, to } = edge.shank
  return { ...edge, shank: { from: Math.min(from, from + wider), to: to + wider } }
}

/**
 * The same moves with the last feed across going `steps` further, or, beside a shoulder, beginning that much further on. If the compound is swung, the
 * last place of the finish moves, and the cross-feed corrects the change of depth there.
 */
export const withAcross = ({ lathe, operation, stop }: Shop, steps: number): Operation => {
  const across = anyAcross(operation, stop.at)
  const end = across === null ? endPlace(operation, stop) : null
  if (steps === 0 || (across === null && end === null)) return operation
  const moved = (index: number): boolean => {
    if (across === null) return end!.brings.includes(index)
    return fromHeadstock(operation) ? placesBefore(operation, stop.at, across).includes(index) : index === across
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

/** Reading of the cross-feed for the drawing's bottom with a swung compound at a reading. Rounded once; a tie leaves metal. */
const crossCount = (lathe: Lathe, operation: Operation, compound: number): number => {
  const shift = compound * stepTravel(lathe.compound.scale) * Math.sin((operation.angle * Math.PI) / 180)
  const depth = (operation.touch.diameter - bottomWanted(operation).aim) / 2
  return Math.ceil((depth - shift) / stepTravel(lathe.crossFeed) - 0.5 - 1e-6)
}

/** A feed across moved by a number of readable steps, and the plan that comes of it. */
export type Across = { readonly steps: number; readonly corrected: Corrected }

/** By how many steps the end of the feed across is moved so that the width comes nearest to the drawing; a tie leaves metal. */
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
  // Beside a shoulder the start moves: a wider tool begins further on.
  const sense = fromHeadstock(operation) ? -1 : 1
  const choices = [...new Set([Math.floor(exact), Math.ceil(exact)])].map((steps) => movedBy(steps * sense))
  const narrowFirst = choices.sort((a, b) => widthOf(a) - widthOf(b))
  const best = narrowFirst.reduce((one, other) =>
    Math.abs(widthOf(other) - aim) < Math.abs(widthOf(one) - aim) - SLACK ? other : one,
  )
  return best.steps * sense < 0 ? asFarAsRoughed(best, movedBy) : best
}

/** Widths within a nanometer are the same. */
const SLACK: Length = 1000

const widthOf = ({ corrected }: Across): Length =>
  corrected.trace.sizes.find(({ id }) => id === 'width')?.surely ?? Number.POSITIVE_INFINITY

/**
 * A wall that roughing has already cut does not come back if the finish stops short of it: that only leaves a step at the floor. So the reading stays
 * as near to the written one as it can without cutting more.
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

/** If a swung compound finishes at several places by the cross-feed: the last of them; beside a shoulder the first. */
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

/** The feed across by the compound, or by a carriage with a dial or an indicator. A feed to a line by eye has no reading to move. */
export const anyAcross = (operation: Operation, at: number): number | null => {
  const over = overToWall(operation, at)
  if (over !== null) return over
  const compound = feedAcross(operation, at)
  if (compound !== null) return compound
  const carriage = operation.moves.flatMap(({ action, slide, count }, index) =>
    index > at && action === 'feed-across' && slide === 'carriage' && typeof count === 'number' ? [index] : [],
  )
  if (operation.cusp !== undefined) return null
  return carriage.length === 1 ? carriage[0]! : null
}

/** Where each wall has a plunge of its own: the move over to the second of them. */
const overToWall = ({ moves, angle, cusp }: Operation, at: number): number | null => {
  const finishes = moves.flatMap(({ action, slide, purpose }, index) =>
    index > at && action === 'feed-in' && slide === 'cross-feed' && purpose === 'finish' ? [index] : [],
  )
  if (cusp !== undefined || finishes.length !== 2) return null
  const [first, second] = finishes as [number, number]
  const over = moves.findLastIndex(
    ({ slide, purpose, count }, index) =>
      index > first &&
      index < second &&
      (slide === 'carriage' || (slide === 'compound' && angle === 0)) &&
      purpose === 'to-place' &&
      typeof count === 'number',
  )
  return over < 0 ? null : over
}

/** Back past the place where the finish begins, and onto it. */
export const placesBefore = (operation: Operation, stop: number, across: number): readonly number[] =>
  operation.moves.flatMap(({ action, slide, count }, index) =>
    index > stop &&
    index < across &&
    slide === slideOf(operation, across) &&
    action !== 'feed-across' &&
    typeof count === 'number'
      ? [index]
      : [],
  )

export const slideOf = ({ moves }: Operation, across: number | null): Slide =>
  across === null ? 'compound' : (moves[across]!.slide ?? 'compound')

/** Fillets that are cut step by step have places for both walls, so a width alone moves none of them. */
const feedAcross = (operation: Operation, at: number): number | null => {
  if (operation.cusp !== undefined) return null
  const across = operation.moves.flatMap(({ action, slide }, index) =>
    index > at && action === 'feed-across' && slide === 'compound' ? [index] : [],
  )
  return across.length === 1 && operation.angle === 0 ? across[0]! : null
}

export const fromHeadstock = ({ placing }: Operation): boolean =>
  placing.point === 'headstock-corner' && 'face' in placing.against
