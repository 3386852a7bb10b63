import type { FormFacts } from '../../moves/grinding.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import * as onFace from '../grind/form.ts'
import type { ShapeGrinding } from '../shape.ts'
import type { VeeTool } from './tool.ts'

export const veeGrinding: ShapeGrinding<VeeTool> = {
  sizes: ({ nose }) => ({ nose }),
  onFace: ({ angle, rakeInUse }, { half, depth }, { face, floor }) => ({
    vee: flank(half ?? angle / 2, depth, face, floor, rakeInUse),
  }),
  carried: ({ nose }, { sidesReach, vee }) => nose + 2 * sidesReach[0] * Math.tan((vee?.ground ?? 0) * (Math.PI / 180)),
  gauged: () => 0,
  // Its flanks widen going back.
  sidesPassSteps: false,
}

const flank = (half: Degrees, depth: Length, face: Length, floor: Length, rake: Degrees): FormFacts['vee'] => ({
  half,
  ground: onFace.halfAngleToGrind(half, depth, face),
  cut: onFace.halfAngleCut(half, depth, face),
  strays: onFace.flankStrays(depth, face, floor, rake),
})
