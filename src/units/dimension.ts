import type { Length } from './length.ts'

/** Degrees, as a plain number. */
export type Degrees = number

/**
 * A toleranced length as drawn. `aim` is the middle of the limits, or the nominal if there are no limits. All in pm.
 */
export type Dimension = {
  readonly nominal: Length
  readonly limits: readonly [low: Length, high: Length] | null
  readonly aim: Length
  /** The text on the drawing, e.g. "5/32 ±0.005". */
  readonly text: string
}

/** A toleranced angle as drawn, in degrees. */
export type AngleDimension = {
  readonly nominal: Degrees
  readonly limits: readonly [low: Degrees, high: Degrees] | null
  readonly aim: Degrees
  readonly text: string
}
