import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const depthAsDiameter: Cause = {
  code: 'depth-as-diameter',
  says: 'depth and diameter were mixed up: twice the depth on the dial, or once off the diameter',
  teach: 'depth and diameter: what the dial reads, and what comes off the work',
  // Also on a dial that reads the diameter, where it is doubled a second time.
  reading: (facts) => (facts.axis === 'deep' ? [2 * (solve(facts) as number)] : []),
  // Off the diameter once in place of twice.
  worked: ({ formula, given: { surface = 0, depth = 0 } }) => (formula === 'bottomDiameter' ? [surface - depth] : []),
}
