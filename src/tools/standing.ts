import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import * as onFace from './grind/form.ts'
import type { Stance } from './raked.ts'
import type { CornerTool, Tool } from './tool.ts'

/** The form that a tool stands in: diameter of the surface, depth of the form. pm. */
export type StandsIn = { readonly surface: Length; readonly depth: Length }

/** Where the tip of the face is when the form is finished. A hollow is finished when its outer tip is on the surface. */
export function stanceOf(tool: Tool, { surface, depth }: StandsIn): Stance {
  const rake = tool.rakeInUse
  const deep = tool.shape === 'corner' ? onFace.depthReached(tool.legOnFace ?? tool.radius, surface / 2, rake) : depth
  return { rake, floor: surface / 2 - deep }
}

/** Included angle that a V of `angle` on its face shows in the work, from its bottom to the surface `depth` above. */
export const veeStands = (angle: Degrees, depth: Length, { rake, floor }: Stance): Degrees =>
  2 * onFace.halfAngleCut(angle / 2, depth, onFace.faceLength(depth, floor, rake))

/** Radius through the bottom and both edges that a round end of `radius` on its face shows, `depth` deep or as deep as it is round. */
export function roundStands(radius: Length, depth: Length, { rake, floor }: Stance): Length {
  const face = Math.min(radius, onFace.faceLength(depth, floor, rake))
  return onFace.roundCut(radius, onFace.depthAt(face, floor, rake), face).radius
}

/** The same sizes the other way: what to grind and gauge on the face. */
export const veeToGrind = (angle: Degrees, depth: Length, { rake, floor }: Stance): Degrees =>
  2 * onFace.halfAngleToGrind(angle / 2, depth, onFace.faceLength(depth, floor, rake))

export const roundToGrind = (radius: Length, depth: Length, { rake, floor }: Stance): Length =>
  onFace.radiusToGrind(radius, Math.min(depth, radius), onFace.faceLength(Math.min(depth, radius), floor, rake))

/** How long the leg of a hollow is along the face, so that it comes out as deep as the radius. */
export const legToGrind = ({ radius, rakeInUse }: CornerTool, { surface }: StandsIn): Length =>
  onFace.faceLength(radius, surface / 2 - radius, rakeInUse)
