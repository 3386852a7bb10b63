import type { Length } from '../units/length.ts'

/** How who measures between two rows comes to a reading: by the nearer row, in proportion where the rows are several steps apart, or not at all. */
export type Between = 'nearer' | 'in proportion' | 'none'

/** A row as far as that goes: what is measured, and readable steps from what is written. */
export type Stepped = { readonly measured: Length; readonly steps: number }

/**
 * Between two rows the readings change where the words say: halfway between one step and the next. There each of the two is replayed as well;
 * where one of them is not proved nobody is told to go by the rows around it. From the largest to the smallest.
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

/** Where the reading changes between two rows: the one just before it, and the one just after it. */
const changes = (one: Stepped, other: Stepped): readonly Stepped[] => {
  const apart = other.steps - one.steps
  return Array.from({ length: Math.abs(apart) }, (_, i) => {
    const measured = one.measured + ((i + 0.5) / Math.abs(apart)) * (other.measured - one.measured)
    return [i, i + 1].map((steps) => ({ measured, steps: one.steps + Math.sign(apart) * steps }))
  }).flat()
}
