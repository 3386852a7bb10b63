import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const diameterAsDepth: Cause = {
  code: 'diameter-as-depth',
  says: 'a dial that reads diameter was taken for one that reads depth: half the reading',
  teach: 'what the dial of the cross-feed reads',
  reading: (facts) => {
    const { scale } = facts
    return scale.reads === 'diameter' ? [solve({ ...facts, scale: { ...scale, reads: 'depth' } }) as number] : []
  },
}
