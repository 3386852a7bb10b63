import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

export const toolWidthForgotten: Cause = {
  code: 'tool-width-forgotten',
  says: 'shifted by the whole width of the groove: the width of the tool was forgotten',
  teach: 'a tool already covers its own width',
  reading: (facts) => (facts.axis === 'along' && facts.width !== null ? [readingOf(facts, facts.width)] : []),
  worked: ({ formula, given: { width = 0 } }) => (formula === 'shift' ? [width] : []),
}
