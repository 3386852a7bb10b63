import type { Instrument } from '../moves/operation.ts'
import type { Units } from '../units/length.ts'
import { decimals, figure, length } from './figure.ts'
import type { Figure, Role } from './phrase.ts'

/** pm as a length of the sheet's units, or degrees for an angle. */
export const dimensionFigure = (role: Role, id: Instrument, value: number, units: Units): Figure =>
  id === 'angle' ? angleFigure(role, value) : length(role, value, units)

export const angleFigure = (role: Role, degrees: number): Figure =>
  figure(role, degrees, 'deg', decimals(degrees, 0, 3))
