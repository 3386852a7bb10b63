import type { Length } from '../../units/length.ts'
import * as onFace from '../grind/form.ts'
import type { Stance } from '../raked.ts'

/**
 * Radius in the work of a round end of `radius` on its face: through the bottom and both edges, `depth` deep or as deep
 * as the end is round.
 */
export function roundInWork(radius: Length, depth: Length, { rake, floor }: Stance): Length {
  const face = Math.min(radius, onFace.faceLength(depth, floor, rake))
  return onFace.roundCut(radius, onFace.depthAt(face, floor, rake), face).radius
}

/** The inverse: what to grind and gauge on the face. */
export const roundToGrind = (radius: Length, depth: Length, { rake, floor }: Stance): Length =>
  onFace.radiusToGrind(radius, Math.min(depth, radius), onFace.faceLength(Math.min(depth, radius), floor, rake))
