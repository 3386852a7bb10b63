import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const diameterAsDepth: Cause = {
  code: 'diameter-as-depth',
  says: 'an amount off the diameter was taken for a depth: half on the dial, or not halved in a depth',
  teach: 'depth and diameter: what the dial reads, and what comes off the work',
  reading: (facts) => {
    const { scale } = facts
    if (scale.reads === 'diameter') return [solve({ ...facts, scale: { ...scale, reads: 'depth' } }) as number]
    // On a dial that reads depth it is halved all the same.
    return facts.axis === 'deep' ? [(solve(facts) as number) / 2] : []
  },
  // The difference of the diameters not halved.
  worked: ({ formula, given: { surface = 0, bottom = 0 } }) => (formula === 'depthBelow' ? [surface - bottom] : []),
}
