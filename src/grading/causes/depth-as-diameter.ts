import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const depthAsDiameter: Cause = {
  code: 'depth-as-diameter',
  says: 'a dial that reads depth was taken for one that reads diameter: twice the reading',
  teach: 'what the dial of the cross-feed reads',
  reading: (facts) => {
    const { scale, axis } = facts
    const other = axis === 'deep' && scale.reads === 'depth'
    return other ? [solve({ ...facts, scale: { ...scale, reads: 'diameter' } }) as number] : []
  },
}
