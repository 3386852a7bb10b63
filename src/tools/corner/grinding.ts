import type { FormFacts } from '../../moves/grinding.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import * as onFace from '../grind/form.ts'
import type { ShapeGrinding } from '../shape.ts'
import type { CornerTool } from './tool.ts'

export const cornerGrinding: ShapeGrinding<CornerTool> = {
  sizes: () => ({}),
  onFace: ({ radius, rakeInUse }, form) => ({ corner: hollow(form.radius ?? radius, form.surface / 2, rakeInUse) }),
  carried: ({ radius }) => radius,
  gauged: (_, { corner }) => corner?.radius ?? 0,
  // It meets a step in another way.
  sidesPassSteps: false,
}

/** The deep tip of a hollow is on center, the radius below the surface. */
const hollow = (radius: Length, surface: Length, rake: Degrees): FormFacts['corner'] => ({
  radius,
  down: onFace.faceLength(radius, surface - radius, rake),
  cutDown: onFace.depthReached(radius, surface, rake),
  ...(rake === 0 ? { arc: null, points: [] } : quarterOf(radius, surface, rake)),
})

/** A few points for the sheet; many to measure how far a circle is off. */
function quarterOf(radius: Length, surface: Length, rake: Degrees) {
  const many = onFace.hollowPoints(radius, surface, rake, 64)
  const face = onFace.nearestCircle(many.map((point) => [point.along, point.face]))
  const cut = onFace.nearestCircle(many.map((point) => [point.along, point.uncorrected]))
  const arc = { radius: face.radius, strays: face.strays, cutsRadius: cut.radius, cutsStray: cut.strays }
  return { arc, points: onFace.hollowPoints(radius, surface, rake, 6) }
}
