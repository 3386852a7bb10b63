import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

export const correctionSubtracted: Cause = {
  code: 'correction-subtracted',
  says: 'the correction was taken the wrong way',
  teach: 'a bottom that measures large is cut deeper, one that measures small less deep',
  reading: (facts) => (facts.correction === null ? [] : [readingOf(facts, facts.travel - 2 * facts.correction)]),
}
