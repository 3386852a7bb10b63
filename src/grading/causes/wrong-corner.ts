import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

/** The corner on the line is the other one: then it is the tool's own width that seems to be missing, or all of the groove's. */
export const wrongCorner: Cause = {
  code: 'wrong-corner',
  says: 'reckoned from the other corner of the tool: shifted by the width of the tool, or by that of the groove',
  teach: 'which corner of the tool is brought to the line',
  reading: (facts) => {
    const { axis, tool, width } = facts
    return axis === 'along' && tool !== null && width !== null ? [readingOf(facts, tool), readingOf(facts, width)] : []
  },
  worked: ({ formula, given: { width = 0, tool = 0 } }) => (formula === 'shift' ? [tool, width] : []),
}
