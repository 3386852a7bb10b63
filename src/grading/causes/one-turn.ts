import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

export const oneTurn: Cause = {
  code: 'one-turn',
  says: 'one whole turn too many or too few',
  teach: 'counting whole turns from 0',
  reading: (facts) => {
    const { scale } = facts
    if (scale.kind !== 'dial') return []
    const right = solve(facts) as number
    return [right + scale.perTurn, right - scale.perTurn]
  },
}
