import { type StandsIn, stanceOf, veeStands } from '../../tools/standing.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Degrees } from '../../units/dimension.ts'
import { isRefusal } from '../choose-tool.ts'
import type { Bench, Refusal } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { veeOnFace } from '../on-face.ts'
import { solved, stepOf, withNose } from './solved.ts'

/** Included angles that differ by less are left to the replay to tell apart: a tenth of a degree, two marks of a bevel protractor. */
const ALIKE: Degrees = 0.1

/**
 * A V tool with the angle that it shows in the work, where its face slopes. That angle depends on the depth, and where the drawing gives no
 * depth the depth depends on the angle: worked out again until they agree. What the form itself lacks is left to the draft to say.
 */
export function asItStands(bench: Bench, feature: VGrooveFeature, tool: VeeTool): VeeTool | Refusal {
  if (tool.rakeInUse === 0) return tool
  const { aim, limits } = feature.angle
  const form = formAt(bench, feature, tool, aim)
  if (form === null) return { ...tool, angle: aim }
  const stands = (at: StandsIn): Degrees => veeStands(tool.angle, at.depth, stanceOf(tool, at))
  const first = stands(form)
  const inside = limits !== null && first >= limits[0] && first <= limits[1]
  if (!inside) return Math.abs(first - aim) <= ALIKE ? { ...tool, angle: aim } : veeOnFace(tool, aim, form)
  let angle = first
  for (let i = 0; i < 8; i++) {
    const next = formAt(bench, feature, tool, angle)
    if (next !== null) angle = stands(next)
  }
  return { ...tool, angle }
}

/** The surface and the depth that the form comes to at an included angle; null where there is no such form. */
function formAt(bench: Bench, feature: VGrooveFeature, tool: VeeTool, angle: Degrees): StandsIn | null {
  const t = Math.tan((angle / 2) * (Math.PI / 180))
  const on = stepOf(bench, feature, t)
  if (isRefusal(on)) return null
  const form = solved(bench, feature, angle / 2, on.step)
  if (isRefusal(form)) return null
  const nosed = withNose(bench, feature, form, tool, t)
  if (isRefusal(nosed)) return null
  const surface = on.step.measured
  const depth = nosed.depth - (on.step.diameter.nominal - surface) / 2
  return depth > 0 && depth < surface / 2 ? { surface, depth } : null
}
