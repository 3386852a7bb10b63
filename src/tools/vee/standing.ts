import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import * as onFace from '../grind/form.ts'
import type { Stance } from '../raked.ts'

/** Included angle in the work of a V of `angle` on its face, from its bottom to the surface `depth` above. */
export const veeInWork = (angle: Degrees, depth: Length, { rake, floor }: Stance): Degrees =>
  2 * onFace.halfAngleCut(angle / 2, depth, onFace.faceLength(depth, floor, rake))

/** The inverse: what to grind and gauge on the face. */
export const veeToGrind = (angle: Degrees, depth: Length, { rake, floor }: Stance): Degrees =>
  2 * onFace.halfAngleToGrind(angle / 2, depth, onFace.faceLength(depth, floor, rake))
