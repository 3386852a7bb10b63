import type { Length } from '../units/length.ts'
import type { Form } from './form.ts'
import type { Instrument, Slide } from './operation.ts'

/**
 * The faults of the machine model that a replay must not find, each with its own rule; 8 and 9 are additions of this
 * project: a stopped spindle, and metal left.
 */
export type FaultKind =
  | 'outside-form' // 1
  | 'moved-in-contact' // 2
  | 'shank-or-obstacle' // 3
  | 'beyond-travel' // 4
  | 'not-clear' // 5
  | 'between-marks' // 6
  | 'open-zero' // 7
  | 'spindle-standing' // cut with the spindle stopped, or measured with it running
  | 'open-form' // surely cut and possibly cut forms differ
  | 'carriage-lock' // moved while it is locked, or metal cut by another slide while it is not locked
  | 'metal-left' // the finished form lies inside the wanted form by more than half a graduation along each axis
  | 'set-up' // the instructions bring the tool to a line nobody scribed, a face that is not there, or metal of another diameter
  | 'shifted-zero' // a zero of the cross-feed that swinging the compound has since shifted by an unknown amount
  | 'no-peck' // one plunge goes deeper than a peck before the tool is drawn out
  | 'counted-in' // by whole turns toward the work with the spindle running
  | 'into-wall' // fed across into a wall, or metal as high as one, that has a plunge of its own
  | 'no-wall-plunge' // nothing is left on a wall for its own plunge
  | 'ledge' // where two sweeps of a floor meet
  | 'binding' // a tool deep in a slot of its own width that could have been widened
  | 'ridge' // between neighboring places of a stepped form more metal is left than the cusp allows

export type Fault = {
  readonly kind: FaultKind
  readonly operation: number
  /** Index of the move in the operation; −1 = seen on the finished form. */
  readonly move: number
  /** How much, pm, if it can be measured. */
  readonly by: number | null
  /** One plain sentence for a person; it needs no figures except `by`. */
  readonly say: string
}

/** A slide's place for backlash 0 and for the whole stated backlash: pm of slide travel from its zero. */
export type Interval = readonly [low: number, high: number]

/** A measured size: on the surely cut and on the possibly cut form. pm, or degrees for an angle. */
export type Size = { readonly id: Instrument; readonly surely: number | null; readonly possibly: number | null }

export type OperationTrace = {
  /**
   * Distance of the tool's reference point from the free end with all dials at zero, and the work diameter at its d = 0
   * then, pm: the result of the set-up.
   */
  readonly zero: { readonly fromEnd: Length; readonly diameter: Length }
  /** After each move, for each slide. */
  readonly slides: readonly Readonly<Record<Slide, Interval>>[]
  readonly surely: Form
  readonly possibly: Form
  /** Sizes of the finished form, one per wanted dimension, in their order. */
  readonly sizes: readonly Size[]
  /** By index of each `measure` move: the sizes at that moment. */
  readonly at: Readonly<Record<number, readonly Size[]>>
  /**
   * By index of each move from a back-out to the next feed: the radial clearance of this move at the full stated
   * backlash, pm.
   */
  readonly clearance: Readonly<Record<number, number>>
  /** By index of each move that cuts: the radial depth of cut over at least a quarter of its edge, pm. */
  readonly taken: Readonly<Record<number, Length>>
  /**
   * By index of each infeed of the cross-feed: how far before its end the first point of the edge meets metal, wherever that is on the edge and whatever the
   * lost motion, pm; 0 if it meets none.
   */
  readonly met: Readonly<Record<number, Length>>
  /**
   * For a form cut step by step: the tallest ridge left on each of its arcs, square to it, from the free end on, pm.
   */
  readonly ridges?: readonly Length[]
}

export type Trace = { readonly operations: readonly OperationTrace[]; readonly faults: readonly Fault[] }
