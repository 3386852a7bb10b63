import { FORMULAS } from '../../exercise/formulas.ts'
import type { Cause } from './cause.ts'

export const radiusForDiameter: Cause = {
  code: 'radius-for-diameter',
  says: 'a radius was taken for a diameter, or the other way round',
  teach: 'radius and diameter',
  worked: ({ formula, given }) => {
    const { surface = 0, depth = 0, bottom = 0, diameter = 0 } = given
    if (formula === 'bottomDiameter') return [surface / 2 - depth, (surface - 2 * depth) / 2]
    if (formula === 'depthBelow') return [surface - bottom / 2, surface / 2 - bottom]
    return formula === 'rpm' ? [FORMULAS.rpm({ ...given, diameter: diameter / 2 })] : []
  },
}
