import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

/** Dials are numbered every ten marks: common practice, no source. */
export const nextNumeral: Cause = {
  code: 'next-numeral',
  says: 'ten marks off: the next number on the dial',
  teach: 'reading between the numbers of a dial',
  reading: (facts) => {
    const { scale } = facts
    if (scale.kind !== 'dial') return []
    const right = solve(facts) as number
    return [right + 10 * scale.graduation, right - 10 * scale.graduation]
  },
}
