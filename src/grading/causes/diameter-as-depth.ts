import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const diameterAsDepth: Cause = {
  code: 'diameter-as-depth',
  says: 'an amount off the diameter was taken for a depth: half on the dial, or not halved in a depth',
  teach: 'depth and diameter: what the dial reads, and what comes off the work',
  reading: (facts) => {
    const { scale } = facts
    return scale.reads === 'diameter' ? [solve({ ...facts, scale: { ...scale, reads: 'depth' } }) as number] : []
  },
  // The difference of the diameters not halved.
  worked: ({ formula, given: { surface = 0, bottom = 0 } }) => (formula === 'depthBelow' ? [surface - bottom] : []),
}
