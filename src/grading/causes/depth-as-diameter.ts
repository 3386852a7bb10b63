import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const depthAsDiameter: Cause = {
  code: 'depth-as-diameter',
  says: 'a depth was taken for an amount off the diameter: twice on the dial, or once off the diameter',
  teach: 'depth and diameter: what the dial reads, and what comes off the work',
  reading: (facts) => {
    const { scale, axis } = facts
    const other = axis === 'deep' && scale.reads === 'depth'
    return other ? [solve({ ...facts, scale: { ...scale, reads: 'diameter' } }) as number] : []
  },
  // Off the diameter once in place of twice.
  worked: ({ formula, given: { surface = 0, depth = 0 } }) => (formula === 'bottomDiameter' ? [surface - depth] : []),
}
