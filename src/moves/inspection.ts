import type { InstrumentName } from '../lathe/instruments.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

/** A piece of a sentence; numbers stay numbers. Lengths in pm, angles in degrees. */
export type TextPart =
  | string
  | { readonly length: Length }
  | { readonly angle: Degrees }
  /** An instrument's size by its name in a shop. */
  | { readonly size: Length; readonly label: string }

export type Taken = { readonly with: InstrumentName; readonly within: number; readonly reads: Length }

/** Proved with the uncertainty of the instrument, or simply read. */
export type Decision = 'prove' | 'simple'

/**
 * `more`: how much more is over the pins than the bottom measures, pm. Pins that rest on flanks do not touch the bottom: there it is so with a flat of `root`
 * between them, and falls by its growth over `tangent`, the tangent of half of the included angle.
 */
export type OverPins = {
  readonly pin: { readonly size: Length; readonly label: string }
  readonly more: Length
  readonly flanks: { readonly root: Length; readonly tangent: number } | null
}

/** One size of the finished work as it is measured at the bench. pm, or degrees for an angle. */
export type Check = {
  /** Stable name, unique in its feature. */
  readonly id: string
  readonly label: string
  readonly unit: 'length' | 'angle'
  /** The instrument, and why it was chosen. */
  readonly using: readonly TextPart[]
  /**
   * What it is taken with, how far that may be off (pm, or degrees), and the smallest step it shows. Null: nothing at
   * hand takes it, so it is not asked for. Absent: judged by eye, or by a pair of gauges.
   */
  readonly by?: Taken | null
  /** The size that the replayed form has, measured this way. */
  readonly planned: number
  readonly limits: readonly [number, number] | null
  /** Of a place along the work: what it is taken from, where that is not the free end. pm from the free end. */
  readonly datum?: { readonly name: string; readonly at: Length }
  /** Of a bottom that is taken over two opposed pins: which, and what is to be taken off the size over them. */
  readonly over?: OverPins
  /** Diameter of each of the two opposed pins or balls it is measured over; null = without pins. */
  readonly pin: Length | null
  /** A pair of flat gauges: the first enters, the second does not. */
  readonly pair: readonly [go: Length, noGo: Length] | null
}
