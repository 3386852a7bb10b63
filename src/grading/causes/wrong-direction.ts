import { solve } from '../../exercise/solve.ts'
import type { Cause } from './cause.ts'

/** Before 0 in place of after it; a dial shows that as what is missing to a full turn. */
export const wrongDirection: Cause = {
  code: 'wrong-direction',
  says: 'turned the wrong way from 0',
  teach: 'which way a dial is turned, and how its numbers run then',
  reading: (facts) => {
    const { scale } = facts
    const right = solve(facts) as number
    const back = scale.kind === 'dial' ? Math.ceil(right / scale.perTurn) * scale.perTurn - right : -right
    return [-right, back]
  },
  worked: ({ formula, given: { width = 0, tool = 0 } }) => (formula === 'shift' ? [tool - width] : []),
}
