import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

/**
 * Curves of depth over distance along the work. `z`: pm from the free end, positive toward the headstock. `d`: pm,
 * positive toward the axis. In a part form d is counted from the axis: d = −radius. In an edge z is the axial offset u
 * from the reference point and d is e(u).
 */
export type Line = {
  readonly kind: 'line'
  readonly z0: Length
  readonly d0: Length
  readonly z1: Length
  readonly d1: Length
}
/**
 * d = dc + side × √(r² − (z − zc)²): side 1 is the deep half of the circle (a convex tool end, a concave groove), −1
 * the shallow half.
 */
export type Arc = {
  readonly kind: 'arc'
  readonly zc: Length
  readonly dc: Length
  readonly r: Length
  readonly side: 1 | -1
}
export type Curve = Line | Arc

/**
 * A stretch of a form: sorted, abutting or with gaps; where two stretches meet at different depths there is a wall.
 * `step`: index of the move that cut it, −1 = stock.
 */
export type Piece = { readonly from: Length; readonly to: Length; readonly curve: Curve; readonly step: number }

/**
 * Depth over distance along the work, as sorted pieces. Where there is no piece there is no work (off the free end).
 */
export type Form = readonly Piece[]

/**
 * The cutting edge as a depth function over u, and the shank behind it. All pm, relative to the tool's reference point.
 */
export type Edge = {
  readonly pieces: Form
  /** How far the ground edge reaches back from its reference point, d = 0. */
  readonly reach: Length
  /** Only for an edge on a sloping face: the radius that was ground on it, null for a V or a square edge. */
  readonly ground?: Length | null
  /** Only for a V: the error of its included angle, degrees; null: the lathe's accuracy for it. */
  readonly angleWithin?: Degrees | null
  /** Axial extent of the blank; equal to the edge's extent if no blank is given. */
  readonly shank: { readonly from: Length; readonly to: Length }
}
