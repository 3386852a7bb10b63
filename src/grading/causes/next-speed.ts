import { FORMULAS, speedsIn } from '../../exercise/formulas.ts'
import type { Cause } from './cause.ts'

export const nextSpeed: Cause = {
  code: 'next-speed',
  says: 'another speed of the lathe was taken: the nearest that is not faster than wanted is right',
  teach: 'which speed of the lathe to take, where the wanted one is between two',
  worked: ({ formula, given }) => {
    if (formula !== 'rpm') return []
    const speeds = speedsIn(given).sort((a, b) => a - b)
    const at = speeds.indexOf(FORMULAS.rpm(given))
    return [speeds[at - 1], speeds[at + 1]].filter((one) => one !== undefined)
  },
}
