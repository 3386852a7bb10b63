import type { Length } from '../../units/length.ts'
import * as onFace from '../grind/form.ts'
import type { EdgeForm } from '../standing.ts'
import type { CornerTool } from './tool.ts'

/** Length of the leg of a hollow along the face that makes it as deep as the radius. */
export const legToGrind = ({ radius, rakeInUse }: CornerTool, { surface }: EdgeForm): Length =>
  onFace.faceLength(radius, surface / 2 - radius, rakeInUse)
