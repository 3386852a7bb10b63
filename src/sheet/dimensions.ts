import type { Instrument } from '../moves/operation.ts'
import type { Units } from '../units/length.ts'
import { decimals, figure, length } from './figure.ts'
import type { Figure, Role } from './sheet.ts'

const LABELS: Readonly<Record<Instrument, string>> = {
  width: 'width',
  depth: 'depth',
  bottomDiameter: 'bottom diameter',
  near: 'near edge from end',
  far: 'far edge from end',
  center: 'center from end',
  root: 'flat at the root',
  angle: 'included angle',
  flatness: 'floor flat within',
  radius: 'radius',
  cornerRadius: 'corner radius',
  legAlong: 'leg along the work',
  legDown: 'leg down the face',
}

export const labelOf = (id: Instrument): string => LABELS[id]

/** pm as a length of the sheet's units, or degrees for an angle. */
export const dimensionFigure = (role: Role, id: Instrument, value: number, units: Units): Figure =>
  id === 'angle' ? angleFigure(role, value) : length(role, value, units)

export const angleFigure = (role: Role, degrees: number): Figure =>
  figure(role, degrees, 'deg', decimals(degrees, 0, 3))
