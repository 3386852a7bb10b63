import type { FormFacts } from '../../moves/grinding.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import type { FormToCut } from '../grind/facts.ts'
import * as onFace from '../grind/form.ts'
import type { ShapeGrinding } from '../shape.ts'
import type { RoundTool } from './tool.ts'

export const roundGrinding: ShapeGrinding<RoundTool> = {
  sizes: () => ({}),
  onFace: ({ radius, rakeInUse }, form) => ({ round: segment(form.radius ?? radius, form, rakeInUse) }),
  carried: ({ radius, edgeWidth }) => edgeWidth ?? 2 * radius,
  gauged: (_, { round }) => round?.ground ?? 0,
  sidesPassSteps: true,
}

/** A round end has sides only up to its half circle. */
function segment(radius: Length, form: FormToCut, rake: Degrees): FormFacts['round'] {
  const depth = Math.min(form.depth, radius)
  const floor = form.surface / 2 - form.depth
  const face = onFace.faceLength(depth, floor, rake)
  const ground = onFace.radiusToGrind(radius, depth, face)
  return {
    radius,
    ground,
    strays: onFace.roundStrays({ radius, ground, depth, floor, rake }),
    width: onFace.roundCut(radius, depth, depth).width,
    cut: onFace.roundCut(radius, depth, face),
  }
}
