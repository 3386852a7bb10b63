import type { Code } from '../diagnostics/codes.ts'
import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Cuts } from '../moves/cuts.ts'
import type { Remedy } from '../moves/offer.ts'
import type { Move } from '../moves/operation.ts'
import type { Prose } from '../phrase/phrase.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'

/** What a feature wants, and what the sequencer must know about the work to keep clear of it. Lengths pm. */
export type Request = {
  /** The units of the job, in which lengths are printed. */
  readonly units: Units
  readonly lathe: Lathe
  readonly angle: Degrees
  /** What moves the tool along the work: a slide by its readings, or the carriage to the scribed lines by eye. */
  readonly sideFeed: 'compound' | 'carriage' | 'lines'
  /** The error of bringing the tool to a line by eye, and the distance of the operation's zero from the free end. */
  readonly eye: Length
  readonly fromEnd: Length
  readonly cuts: Cuts
  readonly origin: Origin
  /** Radial clearance wanted between the edge and the work when it is backed out. */
  readonly clear: Length
  /** The surface is touched beside the form, where nothing is cut, before the tool is brought to its place. */
  readonly touchesBeside: boolean
  /** Axial extent of the cutting edge from its reference point, and its deepest point. */
  readonly edge: { readonly from: Length; readonly to: Length; readonly deepest: Length }
  /**
   * Height of the largest stock over the feature's surface between two places along the work, measured from the zero;
   * at least 0.
   */
  readonly heightOver: (from: Length, to: Length) => Length
  /** How far a tip overlaps the work when it is touched alone: brought over it by eye, or by a reading. */
  readonly tipOverlap: { readonly byEye: Length; readonly byDial: Length }
}

export type Sequenced =
  | { readonly ok: true; readonly moves: readonly Move[] }
  | (Remedy & { readonly ok: false; readonly code: Code; readonly reason: Prose })
