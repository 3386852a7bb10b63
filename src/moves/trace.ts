import type { Length } from '../units/length.ts'
import type { Form } from './form.ts'
import type { Instrument, Slide } from './operation.ts'

/** The faults of the machine model that a replay may never see, each with a rule of its own; 8 and 9 are ours: a standing spindle, and metal left. */
export type FaultKind =
  | 'outside-form' // 1
  | 'moved-in-contact' // 2
  | 'shank-or-obstacle' // 3
  | 'beyond-travel' // 4
  | 'not-clear' // 5
  | 'between-marks' // 6
  | 'open-zero' // 7
  | 'spindle-standing' // cut with the spindle stopped, or measured with it running
  | 'open-form' // surely cut and possibly cut differ
  | 'carriage-lock' // moved while it is locked, or metal cut by another slide while it is not
  | 'metal-left' // the finished form lies inside the wanted form by more than half a graduation along each axis
  | 'set-up' // the hand is told to bring the tool to a line nobody scribed, a face that is not there, or metal of another diameter
  | 'shifted-zero' // a zero of the cross-feed that a swung compound has shifted since by an amount nobody knows
  | 'ridge' // between neighboring places of a stepped form more metal stands than the cusp allows

export type Fault = {
  readonly kind: FaultKind
  readonly operation: number
  /** Index of the move in the operation; −1 = seen on the finished form. */
  readonly move: number
  /** How much, pm, where it can be said. */
  readonly by: number | null
  /** One plain sentence for a person, no figures needed beyond `by`. */
  readonly say: string
}

/** A slide's place for backlash 0 and for the whole stated backlash: pm of slide travel from its zero. */
export type Interval = readonly [low: number, high: number]

/** A measured size: on the surely cut and on the possibly cut form. pm, or degrees for an angle. */
export type Size = { readonly id: Instrument; readonly surely: number | null; readonly possibly: number | null }

export type OperationTrace = {
  /** Where the tool's reference point stands from the free end with all dials at zero, and the work diameter that its d = 0 is at then, pm: what the set-up came to. */
  readonly zero: { readonly fromEnd: Length; readonly diameter: Length }
  /** After each move, for each slide. */
  readonly slides: readonly Readonly<Record<Slide, Interval>>[]
  readonly surely: Form
  readonly possibly: Form
  /** Of the finished form, one per wanted dimension, in their order. */
  readonly sizes: readonly Size[]
  /** By index of each `measure` move: the sizes as they are at that moment. */
  readonly at: Readonly<Record<number, readonly Size[]>>
  /** By index of each move from a back-out to the next feed: the radial clearance of this move at the full stated backlash, pm. */
  readonly clearance: Readonly<Record<number, number>>
  /** By index of each move that cuts: how deep it cuts at once over a quarter of its edge, radially, pm. */
  readonly taken: Readonly<Record<number, Length>>
  /** Of a form that is stepped along: the tallest ridge left on each of its arcs, square to it, from the free end on, pm. */
  readonly ridges?: readonly Length[]
}

export type Trace = { readonly operations: readonly OperationTrace[]; readonly faults: readonly Fault[] }
