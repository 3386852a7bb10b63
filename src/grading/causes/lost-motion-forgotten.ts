import { solve } from '../../exercise/solve.ts'
import { readable } from '../../lathe/lathe.ts'
import type { Cause } from './cause.ts'

/** Who turns back without taking it up stands short by the lost motion; who counts it twice goes past by it. */
export const lostMotionForgotten: Cause = {
  code: 'lost-motion-forgotten',
  says: 'the lost motion was left in the reading: it is taken up before a reading counts',
  teach: 'lost motion: come to a reading always from the same side',
  reading: (facts) => {
    const { scale } = facts
    if (scale.kind !== 'dial') return []
    const right = solve(facts) as number
    const lost = Math.round(scale.backlash / readable(scale)) * readable(scale)
    return [right - lost, right + lost]
  },
}
