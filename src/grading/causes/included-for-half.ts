import { FORMULAS } from '../../exercise/formulas.ts'
import type { Cause } from './cause.ts'

export const includedForHalf: Cause = {
  code: 'included-for-half',
  says: 'reckoned with the included angle where half of it belongs',
  teach: 'the included angle of a V is twice that of each flank',
  worked: ({ formula, given }) => {
    if (formula !== 'vDepth' && formula !== 'vWidth') return []
    const { angle = 0 } = given
    // Twice the angle of a V that is square or more open is no angle of a V.
    return [2, 1 / 2]
      .filter((times) => angle * times < 180)
      .map((times) => FORMULAS[formula]({ ...given, angle: angle * times }))
  },
}
