import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

export const undersizeAdded: Cause = {
  code: 'undersize-wrong-way',
  says: 'what the tool is narrower was added to the width, not what is left of it',
  teach: 'what a tool that measures under its groove leaves to be shifted',
  reading: (facts) => {
    const { axis, tool, width } = facts
    return axis === 'along' && tool !== null && width !== null ? [readingOf(facts, width + (width - tool))] : []
  },
  worked: ({ formula, given: { width = 0, tool = 0 } }) => (formula === 'shift' ? [width + (width - tool)] : []),
}
