import { MOST_MOVES } from '../../moves/bounds.ts'
import type { Length } from '../../units/length.ts'

/**
 * Infeeds of a V. Full infeeds while the contact (nose + 2·depth·t) is at most twice that of the first infeed; beyond
 * that each infeed shrinks in proportion to the contact, so that the chip stays about as heavy. Common practice, no
 * source. pm, ascending, ends at `depth`.
 */
export function shrinkingInfeeds(
  even: (depth: Length, infeed: Length) => Length[],
  depth: Length,
  infeed: Length,
  nose: Length,
  t: number,
): Length[] {
  const contact = (at: Length) => nose + 2 * at * t
  const allowed = (at: Length) => infeed * Math.min(1, (2 * contact(infeed)) / contact(at + infeed))
  if (allowed(depth) === infeed) return even(depth, infeed)
  const depths: Length[] = []
  for (let at = 0; at < depth - 1 && depths.length <= MOST_MOVES; ) {
    const next = at + allowed(at)
    // The remainder is shared with the last pass if it alone would only rub.
    at = next >= depth ? depth : depth - next < allowed(next) / 4 ? at + (depth - at) / 2 : next
    depths.push(Math.round(at))
  }
  return depths
}
