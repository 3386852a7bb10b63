import { depthAt } from '../../tools/grind/form.ts'
import { type EdgeForm, roundInWork, stanceOf } from '../../tools/standing.ts'
import type { RoundTool } from '../../tools/tool.ts'
import { isRefusal } from '../choose-tool.ts'
import type { Bench, Refusal } from '../draft.ts'
import type { ConcaveFeature } from '../feature.ts'
import { roundOnFace } from '../on-face.ts'
import { nearOf, surfaceUnder } from '../place.ts'
import { solveConcave } from './solve-concave.ts'

/** Radii that differ by less than one part in a hundred are left to the replay to check. */
const ALIKE = 0.01

/**
 * A round tool with the radius that it has in the work if its face slopes: through the bottom and the edges of the
 * form, or, if it steps along the form, over as much of its end as the steps use. If the form itself lacks something,
 * the draft reports it.
 */
export function toolInWork(bench: Bench, feature: ConcaveFeature, tool: RoundTool): RoundTool | Refusal {
  if (tool.rakeInUse === 0) return tool
  const { aim, limits } = feature.radius
  const form = formAt(bench, feature)
  if (form === null) return { ...tool, radius: aim }
  const stance = stanceOf(tool, form)
  const radius = Math.round(roundInWork(tool.radius, form.depth, stance))
  if (limits !== null && radius >= limits[0] && radius <= limits[1]) return { ...tool, radius }
  if (Math.abs(radius - aim) <= ALIKE * aim) return { ...tool, radius: aim }
  if (radius > aim) return roundOnFace(bench.units, tool, aim, form)
  const used = Math.min((form.depth * radius) / aim, depthAt(tool.radius, stance.floor, stance.rake))
  return { ...tool, radius: Math.round(roundInWork(tool.radius, used, stance)) }
}

/** The surface and the depth of the form; null if there is no such form. */
function formAt(bench: Bench, feature: ConcaveFeature): EdgeForm | null {
  const size = solveConcave(bench, feature, feature.radius.aim)
  if (isRefusal(size)) return null
  const near = nearOf(bench, feature.place, size.width)
  const step = surfaceUnder(bench, near, near + size.width)
  if (isRefusal(step) || size.depth >= step.measured / 2) return null
  return { surface: step.measured, depth: size.depth }
}
