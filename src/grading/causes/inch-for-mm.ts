import { solve } from '../../exercise/solve.ts'
import { readable } from '../../lathe/lathe.ts'
import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

const MM_PER_INCH = 25.4

export const inchForMm: Cause = {
  code: 'inch-for-mm',
  says: 'inches and millimeters were mixed up',
  teach: 'an inch is 25.4 mm: from one to the other, and back',
  reading: (facts) => [
    readingOf(facts, facts.travel * MM_PER_INCH),
    readingOf(facts, facts.travel / MM_PER_INCH),
    // The number of the other units, set on this dial as it stands.
    ...[100, 10].flatMap((per) => {
      const marks = Math.round((facts.travel * MM_PER_INCH) / per / readable(facts.scale))
      return marks === 0 ? [] : [marks * readable(facts.scale)]
    }),
  ],
  worked: (facts) => {
    const right = solve(facts)
    return facts.unit === 'length' && typeof right === 'number' ? [right * MM_PER_INCH, right / MM_PER_INCH] : []
  },
}
