import type { Prose } from '../phrase/phrase.ts'
import { about, degrees, say } from '../phrase/say.ts'
import type { EdgeForm } from '../tools/standing.ts'
import { legToGrind, roundInWork, roundToGrind, stanceOf, veeInWork, veeToGrind } from '../tools/standing.ts'
import type { CornerTool, RoundTool, Tool, VeeTool } from '../tools/tool.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'
import type { Draft, Refusal } from './draft.ts'
import { belowMeasuring } from './shop.ts'

/** The form for which an edge on a sloping face is worked out: the form of the draft. */
export function edgeFormOf({ surface, dimensions }: Draft): EdgeForm {
  const size = (id: string) => dimensions.find((each) => each.id === id)?.aim
  return { surface, depth: size('depth') ?? size('radius') ?? 0 }
}

/** A V ground on a sloping face to an angle that does not cut the drawing's angle. */
export function veeOnFace(tool: VeeTool, angle: Degrees, form: EdgeForm): Refusal {
  const stance = stanceOf(tool, form)
  const cuts = veeInWork(tool.angle, form.depth, stance)
  const correct = veeToGrind(angle, form.depth, stance)
  if (Math.abs(correct - tool.angle) < 1 / 30) return strays(tool, 'its flanks come out curved', leveled(tool))
  return {
    code: 'ground-on-face',
    reason: say`tool "${tool.name}" is ground to ${degrees('angle', tool.angle)} on its face; with ${degrees('angle', tool.rakeInUse)} of rake in use it cuts ${degrees('angle', cuts)}, the drawing asks for ${degrees('angle', angle)}`,
    remedy: say`grind ${degrees('angle', correct)} on the face, or ${leveled(tool)} and grind ${degrees('angle', angle)}`,
  }
}

/** A round end ground on a sloping face to a radius that does not cut the drawing's radius. */
export function roundOnFace(units: Units, tool: RoundTool, radius: Length, form: EdgeForm): Refusal {
  const stance = stanceOf(tool, form)
  const show = (length: Length) => about('planned', length, units, units === 'inch' ? 4 : 3)
  const correct = roundToGrind(radius, form.depth, stance)
  if (Math.abs(correct - tool.radius) < belowMeasuring)
    return strays(tool, 'its round end comes out flat', leveled(tool))
  return {
    code: 'ground-on-face',
    reason: say`tool "${tool.name}" is ground to a radius of ${show(tool.radius)} on its face; with ${degrees('angle', tool.rakeInUse)} of rake in use it cuts ${show(roundInWork(tool.radius, form.depth, stance))}, the drawing asks for ${show(radius)}`,
    remedy: say`grind a radius of ${show(correct)} on the face, or ${leveled(tool)} and grind ${show(radius)}`,
  }
}

const strays = (tool: Tool, how: Prose, remedy: Prose): Refusal => ({
  code: 'ground-on-face',
  reason: say`tool "${tool.name}" is ground right for the bottom and the edges of the form, but with ${degrees('angle', tool.rakeInUse)} of rake in use ${how} between them, further than half a mark`,
  remedy,
})

/** A hollow on a sloping face has one leg shorter in the work. */
function hollowOnFace(units: Units, tool: CornerTool, form: EdgeForm): Refusal {
  const show = (length: Length) => about('planned', length, units, units === 'inch' ? 4 : 3)
  const down = form.surface / 2 - stanceOf(tool, form).floor
  const leg = tool.legOnFace ?? tool.radius
  const correct = legToGrind(tool, form)
  if (Math.abs(correct - leg) < belowMeasuring) return strays(tool, 'its hollow comes out flat', leveled(tool))
  const stretched = leg === tool.radius ? '' : say`, stretched to ${show(leg)},`
  return {
    code: 'ground-on-face',
    reason: say`tool "${tool.name}" is a quarter of ${show(tool.radius)}${stretched} on its face; with ${degrees('angle', tool.rakeInUse)} of rake in use it cuts ${show(tool.radius)} along the work and ${show(down)} down the face of it`,
    remedy: say`grind the leg that goes down the work ${show(correct)} long on the face, the quarter stretched with it, and say so (leg-on-face); or ${leveled(tool)}, and the quarter comes out round`,
  }
}

/** The replay did not prove a form because the face of the tool slopes; null if that is not the reason. */
export function groundOnFace(units: Units, draft: Draft, failed: Refusal): Refusal | null {
  const { tool, feature } = draft
  if (tool.rakeInUse === 0 || !BY_THE_EDGE.includes(failed.code)) return null
  const form = edgeFormOf(draft)
  if (tool.shape === 'vee' && feature.kind === 'v-groove') return veeOnFace(tool, feature.angle.aim, form)
  if (tool.shape === 'round' && feature.kind === 'radius' && draft.cuts.style === 'plunge')
    return roundOnFace(units, tool, feature.radius.aim, form)
  if (tool.shape === 'square' && tool.cornerRadius <= 0) return null
  if (tool.shape === 'corner') return hollowOnFace(units, tool, form)
  return {
    code: 'ground-on-face',
    reason: say`${failed.reason}; tool "${tool.name}" has ${degrees('angle', tool.rakeInUse)} of rake in use, so that its edge comes out flatter in the work than it is on the face`,
    remedy: leveled(tool),
  }
}

const BY_THE_EDGE = ['outside-form', 'metal-left', 'no-reading']

const leveled = ({ holderAngle }: Tool): Prose =>
  say`level the top (rake-ground: ${holderAngle === 0 ? 0 : -holderAngle})`
