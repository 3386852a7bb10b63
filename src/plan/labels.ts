import type { Instrument } from '../moves/operation.ts'

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
