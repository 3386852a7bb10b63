import type { Length } from '../../units/length.ts'
import * as onFace from '../grind/form.ts'
import type { Stance } from '../raked.ts'

/** Radius through the bottom and both edges that a round end of `radius` on its face shows, `depth` deep or as deep as it is round. */
export function roundStands(radius: Length, depth: Length, { rake, floor }: Stance): Length {
  const face = Math.min(radius, onFace.faceLength(depth, floor, rake))
  return onFace.roundCut(radius, onFace.depthAt(face, floor, rake), face).radius
}

/** The same the other way: what to grind and gauge on the face. */
export const roundToGrind = (radius: Length, depth: Length, { rake, floor }: Stance): Length =>
  onFace.radiusToGrind(radius, Math.min(depth, radius), onFace.faceLength(Math.min(depth, radius), floor, rake))
