import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

export const roughCarriedOn: Cause = {
  code: 'rough-carried-on',
  says: 'the roughing reading was carried on into the finish',
  teach: 'what roughing leaves, the finish takes',
  reading: (facts) => {
    const { rough, correction } = facts
    return rough === null ? [] : [readingOf(facts, rough), readingOf(facts, rough + (correction ?? 0))]
  },
}
