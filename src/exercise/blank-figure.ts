import type { Figure } from '../phrase/phrase.ts'

/** Wide enough to write in, and of the same width for every value behind it. */
const LINE = '____________'

/** A place to write in, numbered as in the answer form. */
export const blankFigure = (number: number | null): Figure => ({
  id: number === null ? 'open' : `blank.${number}`,
  role: 'reading',
  value: Number.NaN,
  unit: 'count',
  digits: 0,
  from: 'answer',
  text: number === null ? '_____________' : `(${number})${LINE}`,
})
