import type { Move, Operation } from '../moves/operation.ts'
import type { Mutant } from './mistakes.ts'

/**
 * The finish of one place of a form cut step by step: indexes of its move to the place, of its infeeds, and of the
 * back-out after them.
 */
type Place = { readonly over: number; readonly feeds: readonly number[]; readonly out: number }

/**
 * Mistakes between the places of a form cut step by step. `lost`: readable steps of the compound's lost motion, rounded
 * up.
 */
export function alongTheSteps(operation: Operation, lost: number): readonly Mutant[] {
  const { moves, cusp } = operation
  // If a floor is fed across too, the round corners are too small for a gauge to show anything.
  const round = cusp !== undefined && moves.every(({ action }) => action !== 'feed-across')
  const places = round ? placesOf(moves) : []
  if (places.length < 3) return []
  // A quarter of the way: on the slope of a groove, and on a corner where the depth still changes from place to place.
  const at = places[Math.floor(places.length / 4)]!
  const wrong = (mistake: Mutant['mistake'], made: readonly Move[]): Mutant => ({
    mistake,
    operation: { ...operation, moves: made },
  })
  return [
    wrong('place-left-out', leftOut(moves, at)),
    wrong('next-line-read', nextLine(moves, places)),
    ...(lost > 0 ? [wrong('place-backward', backward(moves, at, lost))] : []),
  ]
}

function placesOf(moves: readonly Move[]): readonly Place[] {
  const places: Place[] = []
  for (const [over, move] of moves.entries()) {
    if (move.slide !== 'compound' || (move.action !== 'shift' && move.action !== 'return')) continue
    const feeds: number[] = []
    for (let i = over + 1; finishesIn(moves[i]); i++) feeds.push(i)
    const out = over + feeds.length + 1
    if (feeds.length > 0 && moves[out]?.action === 'back-out') places.push({ over, feeds, out })
  }
  return places
}

const finishesIn = (move: Move | undefined): boolean =>
  move?.action === 'feed-in' && move.slide === 'cross-feed' && move.purpose === 'finish'

const leftOut = (moves: readonly Move[], { over, out }: Place): readonly Move[] =>
  moves.filter((_, index) => index < over || index > out)

/** Every place fed to the depth of the one after it: from the first on, the eye is one line too low in the table. */
function nextLine(moves: readonly Move[], places: readonly Place[]): readonly Move[] {
  const depths = new Map<number, number>()
  for (const [i, { feeds }] of places.slice(0, -1).entries()) {
    const target = moves[places[i + 1]!.feeds.at(-1)!]!.count!
    for (const feed of feeds) depths.set(feed, Math.min(moves[feed]!.count!, target))
    depths.set(feeds.at(-1)!, target)
  }
  return moves.map((move, index) => (depths.has(index) ? { ...move, count: depths.get(index)! } : move))
}

/** Turned past the place and straight back onto it. */
function backward(moves: readonly Move[], { over }: Place, lost: number): readonly Move[] {
  const move = moves[over]!
  return [...moves.slice(0, over), { ...move, count: move.count! + lost + 1 }, move, ...moves.slice(over + 1)]
}
