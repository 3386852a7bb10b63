import { depthAt, faceLength } from '../../tools/grind/form.ts'
import { type EdgeForm, stanceOf, veeInWork } from '../../tools/standing.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import { isRefusal } from '../choose-tool.ts'
import type { Bench, Draft, Refusal } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { edgeFormOf, veeOnFace } from '../on-face.ts'
import { solved, stepOf, withNose } from './solved.ts'

/**
 * Included angles that differ by less are left to the replay to check: a tenth of a degree, two marks of a bevel
 * protractor.
 */
const ALIKE: Degrees = 0.1

/**
 * A V tool with the angle that it has in the work if its face slopes. That angle depends on the depth, and if the
 * drawing gives no depth the depth depends on the angle: both are worked out again until they agree. If the form itself
 * lacks something, the draft reports it.
 */
export function toolInWork(bench: Bench, feature: VGrooveFeature, tool: VeeTool): VeeTool | Refusal {
  if (tool.rakeInUse === 0) return tool
  const { aim, limits } = feature.angle
  const form = formAt(bench, feature, tool, aim)
  if (form === null) return { ...tool, angle: aim }
  const angleInWork = (at: EdgeForm): Degrees => veeInWork(tool.angle, at.depth, stanceOf(tool, at))
  const first = angleInWork(form)
  const inside = limits !== null && first >= limits[0] && first <= limits[1]
  if (!inside) return Math.abs(first - aim) <= ALIKE ? { ...tool, angle: aim } : veeOnFace(tool, aim, form)
  let angle = first
  for (let i = 0; i < 8; i++) {
    const next = formAt(bench, feature, tool, angle)
    if (next !== null) angle = angleInWork(next)
  }
  return { ...tool, angle }
}

/** The surface and the depth of the form at an included angle; null if there is no such form. */
function formAt(bench: Bench, feature: VGrooveFeature, tool: VeeTool, angle: Degrees): EdgeForm | null {
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

/**
 * How much more two pins measure over flanks that a sloping face has left curved than over straight ones between the
 * same ends: 0 without rake. A pin that touches a flank at a point is √((p/2)² − u²) above it, u from the middle; it
 * rests on the point that lifts it most.
 */
export function overCurvedFlanks(draft: Draft, root: Length, pin: Length): Length {
  const { tool } = draft
  if (tool.shape !== 'vee' || tool.rakeInUse === 0) return 0
  const form = edgeFormOf(draft)
  const { rake, floor } = stanceOf(tool, form)
  const face = faceLength(form.depth, floor, rake)
  const across = face * Math.tan((tool.angle / 2) * (Math.PI / 180))
  const lift = (flank: (part: number) => Length): Length => {
    const over = parts.flatMap((part) => {
      const square = (pin / 2) ** 2 - (root / 2 + part * across) ** 2
      return square < 0 ? [] : [flank(part) + Math.sqrt(square)]
    })
    return Math.max(...over)
  }
  return 2 * (lift((part) => depthAt(part * face, floor, rake)) - lift((part) => part * form.depth))
}

/** Around its highest place the lift is flat: this many parts find it to a few nanometers. */
const parts = Array.from({ length: 4097 }, (_, i) => i / 4096)
