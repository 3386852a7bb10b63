import type { Length } from './length.ts'

/** Degrees, as a plain number. */
export type Degrees = number

/** A toleranced length as drawn. `aim` is the middle of the limits, or the nominal where none are given. All in pm. */
export type Dimension = {
  readonly nominal: Length
  readonly limits: readonly [low: Length, high: Length] | null
  readonly aim: Length
  /** As the drawing has it, e.g. "5/32 ±0.005". */
  readonly text: string
}

/** A toleranced angle as drawn, in degrees. */
export type AngleDimension = {
  readonly nominal: Degrees
  readonly limits: readonly [low: Degrees, high: Degrees] | null
  readonly aim: Degrees
  readonly text: string
}
