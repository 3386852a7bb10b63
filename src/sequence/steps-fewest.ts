import type { Length } from '../units/length.ts'

/** How far what stays between two places stands out of the form, and before the first and after the last of them. pm. */
export type Ridges = {
  /** The first and the last place may be any that leave no more than the cusp beyond them; else they are the ends of the range. */
  readonly anyEnd: boolean
  readonly before: (count: number) => Length
  readonly after: (count: number) => Length
  readonly between: (near: number, far: number) => Length
  /** No place further on than the first that this says no to can follow `near`. */
  readonly near: (near: number, far: number) => boolean
}

/**
 * The fewest counts from `low` to `high` whose ridges keep the cusp, and among those the ones with the lowest ridges; where none keep it,
 * the fewest with the least tallest ridge.
 */
export function fewestPlaces(
  range: { readonly low: number; readonly high: number },
  ridges: Ridges,
  cusp: Length,
): number[] {
  const links = linksOf(range, ridges)
  const least = bestWay(range, links, ridges, lower)
  const allowed = Math.max(cusp, least.tallest)
  return placesOf(bestWay(range, links, ridges, fewer, allowed), range.low)
}

/** Is one way better than another: by how many places they take, and how tall their tallest ridges are. */
type Better = (places: number, tallest: Length, otherPlaces: number, otherTallest: Length) => boolean

const lower: Better = (_, tallest, __, otherTallest) => tallest < otherTallest
const fewer: Better = (places, tallest, otherPlaces, otherTallest) =>
  places < otherPlaces || (places === otherPlaces && tallest < otherTallest)

/** For each place, counted from `low`, the ridges to those that can follow it, the next one first. */
type Links = readonly Float64Array[]

/** A place further on has no nearer a last one to follow it, so the search for that goes on where it ended for the place before. */
function linksOf({ low, high }: { low: number; high: number }, { between, near }: Ridges): Links {
  const last = high - low
  let end = 0
  return Array.from({ length: last + 1 }, (_, from) => {
    end = Math.min(Math.max(end, from + 1), last)
    while (end < last && near(low + from, low + end + 1)) end++
    while (end > from + 1 && !near(low + from, low + end)) end--
    return Float64Array.from({ length: Math.max(0, end - from) }, (_, i) => between(low + from, low + from + 1 + i))
  })
}

/** Where a way ends, its tallest ridge, and the place before each place on the best way there, −1 before the first. */
type Way = { readonly end: number; readonly tallest: Length; readonly before: Int32Array }

/** The best way from a place that may be the first to one that may be the last, with those ends counted in its tallest ridge. No ridge over `most`. */
function bestWay(
  { low }: { low: number },
  links: Links,
  { anyEnd, before, after }: Ridges,
  better: Better,
  most = Number.POSITIVE_INFINITY,
): Way {
  const last = links.length - 1
  const [places, came] = [new Int32Array(last + 1), new Int32Array(last + 1)]
  const tallest = new Float64Array(last + 1)
  let [end, endPlaces, endTallest] = [-1, 0, 0]
  const offer = (at: number, count: number, ridge: Length, from: number): void => {
    if (places[at] !== 0 && !better(count, ridge, places[at]!, tallest[at]!)) return
    places[at] = count
    tallest[at] = ridge
    came[at] = from
  }
  for (let at = 0; at <= last; at++) {
    const here = anyEnd ? before(low + at) : 0
    if (at === 0 || (anyEnd && here <= most)) offer(at, 1, here, -1)
    if (places[at] === 0) continue
    const [count, ridge] = [places[at]!, tallest[at]!]
    const next = links[at]!
    for (let i = 0; i < next.length; i++)
      if (next[i]! <= most) offer(at + 1 + i, count + 1, Math.max(ridge, next[i]!), at)
    const beyond = anyEnd ? after(low + at) : 0
    if (at < last && (!anyEnd || beyond > most)) continue
    const whole = Math.max(ridge, beyond)
    if (end >= 0 && !better(count, whole, endPlaces, endTallest)) continue
    ;[end, endPlaces, endTallest] = [at, count, whole]
  }
  return { end, tallest: endTallest, before: came }
}

function placesOf({ end, before }: Way, low: number): number[] {
  const places: number[] = []
  for (let at = end; at >= 0; at = before[at]!) places.push(low + at)
  return places.reverse()
}
