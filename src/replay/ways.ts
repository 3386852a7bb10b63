import type { Interval } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import { type Bench, standing } from './bench.ts'
import type { Place } from './form/sweep.ts'
import { placeOf } from './slide.ts'

/** Where the slides may be during a move: along the work as intervals, the cross-feed at its deepest. */
export type Reach = { readonly carriage: Interval; readonly compound: Interval; readonly cross: Length }
/** Straight paths of the reference point. */
export type Ways = readonly (readonly [Place, Place])[]

/** Where the slides are between moves, with no lost motion of the cross-feed (0) or with all of it (1). */
export const standingReach = ({ slides }: Bench, end: 0 | 1): Reach => ({
  carriage: standing(slides.carriage),
  compound: standing(slides.compound),
  cross: placeOf(slides['cross-feed'])[end],
})

/** The paths around all places that are possible: a point, a line, or four sides where both slides may vary. */
export const waysOf = (bench: Bench, { carriage, compound, cross }: Reach): Ways => {
  const k0 = carriage[0]
  const k1 = carriage[1]
  const c0 = compound[0]
  const c1 = compound[1]
  if (k1 - k0 < 0.5) {
    const from = placeAt(bench, k0, c0, cross)
    return [[from, c0 === c1 ? from : placeAt(bench, k0, c1, cross)]]
  }
  const at = (k: Length, c: Length): Place => placeAt(bench, k, c, cross)
  if (c1 - c0 < 0.5) return [[at(k0, c0), at(k1, c0)]]
  const corners = [at(k0, c0), at(k1, c0), at(k1, c1), at(k0, c1)] as const
  return corners.map((corner, index) => [corner, corners[(index + 1) % 4]!] as const)
}

/** Called only after both zeros are found. */
const placeAt = ({ way, fromEnd, depth }: Bench, k: Length, c: Length, x: Length): Place => ({
  z: fromEnd! + k + c * way.z,
  d: depth! + x + c * way.d,
})
