import { FORMULAS } from '../../exercise/formulas.ts'
import type { Cause } from './cause.ts'

export const includedForHalf: Cause = {
  code: 'included-for-half',
  says: 'reckoned with the included angle where half of it belongs',
  teach: 'the included angle of a V is twice that of each flank',
  worked: ({ formula, given }) => {
    if (formula !== 'vDepth' && formula !== 'vWidth') return []
    const { angle = 0 } = given
    return [2, 1 / 2].map((times) => FORMULAS[formula]({ ...given, angle: angle * times }))
  },
}
