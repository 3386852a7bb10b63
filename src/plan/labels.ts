import type { CauseName } from '../budget/budgeted.ts'
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

const CAUSES: Readonly<Record<CauseName, string>> = {
  'reading-cross-feed': 'reading the cross-feed',
  'reading-compound': 'reading the compound',
  'reading-carriage': 'reading the carriage',
  'tailstock-line': 'meeting the tailstock line by eye',
  'headstock-line': 'meeting the headstock line by eye',
  'place-by-eye': 'a place met by eye',
  'touch-off': 'touching off',
  layout: 'layout line',
  tool: 'measuring the tool',
  'tool-angle': 'the angle of the tool',
  swivel: 'setting the swivel',
  stock: 'measuring the stock',
  runout: 'spindle runout',
  bottom: 'measuring the bottom',
  width: 'measuring the width',
  marks: 'correcting by whole marks',
  none: 'none',
  'no-size': 'no such size on the replayed form',
}

/** The shop's words for an error that is stated. */
export const causeWords = (cause: CauseName): string => CAUSES[cause]
