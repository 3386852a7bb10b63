import type { Prose } from '../../phrase/phrase.ts'
import { degrees, exact, say } from '../../phrase/say.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Degrees } from '../../units/dimension.ts'
import { INCH, type Length } from '../../units/length.ts'
import { isRefusal } from '../choose-tool.ts'
import type { Bench, PlacedStep, Refusal } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { nearOf, surfaceUnder } from '../place.ts'
import { belowMeasuring } from '../shop.ts'
import { solveV, type VForm } from './form.ts'

export function aimedAngle(feature: VGrooveFeature, tool: VeeTool | null): Degrees | Refusal {
  const { aim, limits } = feature.angle
  if (tool === null || Math.abs(tool.angle - aim) < 1e-6) return aim
  if (limits !== null && tool.angle >= limits[0] && tool.angle <= limits[1]) return tool.angle
  return {
    code: 'wrong-angle',
    reason: say`tool "${tool.name}" is ground to ${degrees('angle', tool.angle)}, the drawing asks for ${degrees('angle', aim)}`,
    remedy: say`grind the tool to ${degrees('angle', aim)} included, ${degrees('angle', aim / 2)} a side`,
  }
}

/** The step under the V, found by the edges as drawn; `drawn` is the width at the nominal surface. */
export function stepOf(
  bench: Bench,
  feature: VGrooveFeature,
  t: number,
): { step: PlacedStep; drawn: Length } | Refusal {
  const tries = bench.steps.map((step) => ({
    step,
    drawn: solveV({ halfAngle: Math.atan(t) * (180 / Math.PI), ...given(feature, step, t) }).width,
  }))
  for (const { step, drawn } of tries) {
    const near = nearOf(bench, feature.place, drawn)
    const under = surfaceUnder(bench, near, near + drawn)
    if (under === step) return { step, drawn }
  }
  const first = tries[0]!
  const near = nearOf(bench, feature.place, first.drawn)
  const why = surfaceUnder(bench, near, near + first.drawn)
  return isRefusal(why)
    ? why
    : { code: 'crosses-a-step', reason: 'the V fits on no single step', remedy: 'correct its place or the steps' }
}

/** The drawing's dimensions converted to the nominal surface. */
function given(
  feature: VGrooveFeature,
  step: PlacedStep,
  t: number,
): { width?: Length; depth?: Length; root?: Length } {
  const surface = step.diameter.nominal
  const width =
    feature.width === null
      ? undefined
      : feature.width.aim + (feature.widthAt === null ? 0 : (surface - feature.widthAt) * t)
  const depth =
    feature.depth?.aim ?? (feature.bottomDiameter === null ? undefined : (surface - feature.bottomDiameter.aim) / 2)
  return {
    ...(width !== undefined && { width }),
    ...(depth !== undefined && { depth }),
    ...(feature.root !== null && { root: feature.root.aim }),
  }
}

export function solved(bench: Bench, feature: VGrooveFeature, half: Degrees, step: PlacedStep): VForm | Refusal {
  const show = (length: Length) => exact('drawing', length, bench.units)
  const t = Math.tan(half * (Math.PI / 180))
  const { width, depth, root } = given(feature, step, t)
  if (width !== undefined && depth !== undefined && root !== undefined) {
    const found = width - 2 * depth * t
    const slack = Math.max(
      INCH / 1000,
      ...[feature.width, feature.depth, feature.root].map((one) =>
        one?.limits ? (one.limits[1] - one.limits[0]) / 2 : 0,
      ),
    )
    if (Math.abs(found - root) > slack)
      return {
        code: 'contradiction',
        reason: say`width ${show(width)}${feature.widthAt === null ? '' : ' at the surface'}, depth ${show(depth)} and root ${show(root)} contradict each other at ${degrees('angle', 2 * half)}: width and depth give a root of ${show(found)}; width and root a depth of ${show((width - root) / (2 * t))}; depth and root a width of ${show(root + 2 * depth * t)}${feature.widthAt === null ? '' : ' there'}`,
        remedy: 'give two of the three, or correct the wrong one',
      }
  }
  const form = solveV({
    halfAngle: half,
    ...(width !== undefined && { width }),
    ...(depth !== undefined && { depth }),
    ...(root !== undefined && { root }),
  })
  if (form.root < -1 || form.depth <= 0)
    return {
      code: 'no-solution',
      reason: say`a V of ${degrees('angle', 2 * half)}, ${show(form.width)} wide, comes to a point at ${show(form.width / (2 * t))}: it cannot be ${show(form.depth)} deep`,
      remedy: 'correct the width, the depth or the angle',
    }
  return { ...form, root: Math.max(0, form.root) }
}

/**
 * A real nose has a flat: it must fit the root, or on a V drawn sharp the given dimension is kept and the flat that
 * remains is stated.
 */
export function withNose(
  bench: Bench,
  feature: VGrooveFeature,
  form: VForm,
  tool: VeeTool | null,
  t: number,
): (VForm & { notes: Prose[] }) | Refusal {
  if (tool === null || tool.nose <= form.root) return { ...form, notes: [] }
  const show = (length: Length) => exact('drawing', length, bench.units)
  if (tool.nose - form.root <= belowMeasuring && form.root > 0)
    return { width: form.width, depth: (form.width - tool.nose) / (2 * t), root: tool.nose, notes: [] }
  if (form.root > INCH / 1000)
    return {
      code: 'nose-too-wide',
      reason: say`the nose of tool "${tool.name}" measures ${show(tool.nose)}, the root of the V is ${show(form.root)}`,
      remedy: say`grind the nose to ${show(form.root)} or less`,
    }
  const notes = [say`Drawn sharp; the nose leaves a flat of ${show(tool.nose)}.`]
  if (feature.width === null)
    return { width: form.depth * 2 * t + tool.nose, depth: form.depth, root: tool.nose, notes }
  if (form.width <= tool.nose)
    return {
      code: 'nose-too-wide',
      reason: say`the nose of tool "${tool.name}" measures ${show(tool.nose)}, the whole V ${show(form.width)}`,
      remedy: 'grind a sharper nose',
    }
  return { width: form.width, depth: (form.width - tool.nose) / (2 * t), root: tool.nose, notes }
}
