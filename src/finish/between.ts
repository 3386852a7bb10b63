import type { Length } from '../units/length.ts'

/** How to find the reading for a size between two rows: from the nearer row, in proportion if the rows are several steps apart, or not at all. */
export type Between = 'nearer' | 'in proportion' | 'none'

/** What is needed of a row: the measured size, and the readable steps from the reading as written. */
export type Stepped = { readonly measured: Length; readonly steps: number }

/**
 * Between two rows the reading changes halfway between one step and the next, as the words under the table say. Both sides of that place are replayed
 * too. If one of them fails, nobody is told to use the rows around it. Rows go from the largest to the smallest.
 */
export const betweenRows = (
  rows: readonly Stepped[],
  without: readonly Length[],
  proves: (measured: Length, steps: number) => boolean,
): Between => {
  const pairs = rows.slice(1).flatMap((other, i): readonly (readonly [Stepped, Stepped])[] => {
    const one = rows[i]!
    return without.some((at) => at < one.measured && at > other.measured) ? [] : [[one, other]]
  })
  const tried = pairs.flatMap(([one, other]) => changes(one, other))
  if (!tried.every(({ measured, steps }) => proves(measured, steps))) return 'none'
  return pairs.some(([one, other]) => Math.abs(one.steps - other.steps) > 1) ? 'in proportion' : 'nearer'
}

/** The two sizes around the place where the reading changes: just before it and just after it. */
const changes = (one: Stepped, other: Stepped): readonly Stepped[] => {
  const apart = other.steps - one.steps
  return Array.from({ length: Math.abs(apart) }, (_, i) => {
    const measured = one.measured + ((i + 0.5) / Math.abs(apart)) * (other.measured - one.measured)
    return [i, i + 1].map((steps) => ({ measured, steps: one.steps + Math.sign(apart) * steps }))
  }).flat()
}
