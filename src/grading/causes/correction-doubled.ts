import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

/** The difference of the diameters set on a dial of depth as it is, or half of it where the dial reads the diameter. */
export const correctionDoubled: Cause = {
  code: 'correction-by-diameter',
  says: 'the whole difference of the diameters was corrected: in depth it is half of it',
  teach: 'a difference of diameters is twice that of the depth',
  reading: (facts) => (facts.correction === null ? [] : [readingOf(facts, facts.travel + facts.correction)]),
}
