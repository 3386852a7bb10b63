import type { Length } from '../units/length.ts'

/**
 * How far the metal left between two places is outside the form, and the metal left before the first and after the last
 * of them. pm.
 */
export type Ridges = {
  /**
   * Any place may be the first or last if it leaves no more than the cusp beyond it; otherwise they are the ends of the
   * range.
   */
  readonly anyEnd: boolean
  readonly before: (count: number) => Length
  readonly after: (count: number) => Length
  readonly between: (near: number, far: number) => Length
  /** If this returns false for a place, no place further on can follow `near`. */
  readonly near: (near: number, far: number) => boolean
}

/**
 * The fewest counts from `low` to `high` whose ridges are within the cusp, and among those the ones with the lowest
 * ridges; if none are within it, the fewest with the least tallest ridge.
 */
export function fewestPlaces(
  range: { readonly low: number; readonly high: number },
  ridges: Ridges,
  cusp: Length,
): number[] {
  const links = linksOf(range, ridges)
  const least = ways(range.high - range.low, links, ridges, range, ({ tallest }, other) => tallest < other.tallest)
  const allowed = Math.max(cusp, least.tallest)
  const kept = links.map((list) => list.filter(({ ridge }) => ridge <= allowed))
  const fewer = (one: Way, other: Way) =>
    one.places < other.places || (one.places === other.places && one.tallest < other.tallest)
  return placesOf(ways(range.high - range.low, kept, ridges, range, fewer, allowed), range.low)
}

/** From a place to one further on. Places are counted from `low`. */
type Link = { readonly to: number; readonly ridge: Length }
type Way = { readonly places: number; readonly tallest: Length; readonly at: number; readonly before: Way | null }

function linksOf({ low, high }: { low: number; high: number }, { between, near }: Ridges): Link[][] {
  return Array.from({ length: high - low + 1 }, (_, from) => {
    const links: Link[] = []
    for (let to = from + 1; to <= high - low; to++) {
      if (to > from + 1 && !near(low + from, low + to)) break
      links.push({ to, ridge: between(low + from, low + to) })
    }
    return links
  })
}

/**
 * The best way from a place that may be the first to one that may be the last, including those ends in its tallest
 * ridge.
 */
function ways(
  last: number,
  links: readonly (readonly Link[])[],
  { anyEnd, before, after }: Ridges,
  { low }: { low: number },
  better: (one: Way, other: Way) => boolean,
  most = Number.POSITIVE_INFINITY,
): Way {
  const best: (Way | undefined)[] = Array.from({ length: last + 1 })
  const offer = (way: Way) => {
    const now = best[way.at]
    if (now === undefined || better(way, now)) best[way.at] = way
  }
  let end: Way | undefined
  for (let at = 0; at <= last; at++) {
    const here = anyEnd ? before(low + at) : 0
    if (at === 0 || (anyEnd && here <= most)) offer({ places: 1, tallest: here, at, before: null })
    const way = best[at]
    if (way === undefined) continue
    for (const { to, ridge } of links[at]!)
      offer({ places: way.places + 1, tallest: Math.max(way.tallest, ridge), at: to, before: way })
    const beyond = anyEnd ? after(low + at) : 0
    if (at < last && (!anyEnd || beyond > most)) continue
    const whole = { ...way, tallest: Math.max(way.tallest, beyond) }
    if (end === undefined || better(whole, end)) end = whole
  }
  return end!
}

function placesOf(end: Way, low: number): number[] {
  const places: number[] = []
  for (let way: Way | null = end; way !== null; way = way.before) places.push(low + way.at)
  return places.reverse()
}
