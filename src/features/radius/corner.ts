import { bounded } from '../../moves/bounds.ts'
import type { CornerCuts } from '../../moves/cuts.ts'
import type { Edge } from '../../moves/form.ts'
import { arcPiece } from '../../moves/pieces.ts'
import { asDrawn, exact, say } from '../../phrase/say.ts'
import { edgeDepth, edgeOf } from '../../tools/edge.ts'
import type { CornerTool, Tool } from '../../tools/tool.ts'
import type { Length } from '../../units/length.ts'
import { isRefusal, namedTool, toGrind } from '../choose-tool.ts'
import { type Bench, type Drafted, type PlacedStep, type Refusal, refuse } from '../draft.ts'
import type { CornerFeature } from '../feature.ts'
import { datum } from '../place.ts'
import {
  belowMeasuring,
  besideFace,
  defaultClear,
  defaultCornerInfeed,
  defaultLeave,
  pastTheDepth,
  tipByEye,
} from '../shop.ts'
import { type Stepper, steppedCorner, stepperOf } from './step-corner.ts'

/**
 * A convex radius on a corner that faces the tailstock, cut by a corner tool of the same radius, or stepped around with
 * a round or a square tool.
 */
export function draftCorner(bench: Bench, feature: CornerFeature): Drafted {
  const stepper = steppingTool(bench, feature)
  if (isRefusal(stepper)) return { ok: false, refusal: stepper }
  const named = stepper !== null ? null : namedTool(bench, feature, 'corner')
  if (isRefusal(named)) return { ok: false, refusal: named }
  const show = (length: Length) => exact('drawing', length, bench.units)
  const at = datum(bench, feature.cornerOf)
  const index = bench.steps.findIndex((step) => step.start === at)
  const step = bench.steps[index]!
  const limits = feature.radius.limits
  const radius = named?.radius ?? feature.radius.aim
  if (
    Math.abs(radius - feature.radius.aim) > belowMeasuring &&
    (limits === null || radius < limits[0] || radius > limits[1])
  )
    return refuse(
      'wrong-radius',
      say`the radius of tool "${named!.name}" is ${show(radius)}, the drawing asks for ${show(feature.radius.aim)}`,
      say`grind the hollow to ${show(feature.radius.aim)}, or leave tool: out and the sheet says which one to grind`,
    )
  if (radius >= step.length || radius >= step.measured / 2)
    return refuse(
      'no-solution',
      say`a radius of ${show(radius)} does not fit a step ${show(step.length)} long and ${show(step.measured)} in diameter`,
      'correct the radius or the step',
    )
  const room = shoulderRoom(bench, feature, index, radius, stepper?.r ?? 0)
  if (room !== null) return refuse(room.code, room.reason, room.remedy)
  if (stepper !== null) {
    const { zeroFromEnd, ...own } = steppedCorner(bench, feature, radius, stepper, { at, step })
    const base = assemble(bench, feature, stepper.tool, radius, step, at)
    return { ok: true, draft: { ...base, ...own, zero: { ...base.zero, fromEnd: zeroFromEnd } } }
  }
  const tool = named ?? cornerToGrind(bench, feature, radius)
  return { ok: true, draft: assemble(bench, feature, tool, radius, step, at) }
}

/** A round or a square tool that the feature names: it does not have the form, it steps around it. */
function steppingTool(bench: Bench, feature: CornerFeature): Stepper | Refusal | null {
  const tool = feature.tool === null ? undefined : bench.tools[feature.tool]
  return tool?.shape === 'round' || tool?.shape === 'square' ? stepperOf(bench, tool) : null
}

/**
 * At a shoulder the lower step must be deeper than the tip reaches, with clearance; a round tool reaches its own radius
 * deeper.
 */
function shoulderRoom(
  bench: Bench,
  feature: CornerFeature,
  index: number,
  radius: Length,
  round: Length,
): Refusal | null {
  const show = (length: Length) => exact('drawing', length, bench.units)
  const lower = bench.steps[index - 1]
  if (lower === undefined) {
    if (bench.part.held === 'chuck' || bench.part.held === 'collet') return null
    return {
      code: 'center-in-the-way',
      reason: 'the corner is at the free end and there is a center',
      remedy: 'hold the work in a chuck without the center for this corner',
    }
  }
  const height = (bench.steps[index]!.measured - lower.measured) / 2
  const clear = feature.cutting.clear ?? defaultClear(bench.units)
  if (height <= 0)
    return {
      code: 'no-corner',
      reason: say`step "${feature.cornerOf}" is no larger than the step before it, so it has no corner that faces the tailstock`,
      remedy: 'name the step whose tailstock-side corner is meant',
    }
  if (height >= radius + round + clear) return null
  if (round > 0)
    return {
      code: 'shoulder-too-low',
      reason: say`the shoulder is ${show(height)} high; stepping around a radius of ${show(radius)} with a round tool of ${show(round)} goes ${show(radius + round)} deep at the face and needs ${show(radius + round + clear)}`,
      remedy: 'take a corner tool or a square tool, or a smaller round tool',
    }
  return {
    code: 'shoulder-too-low',
    reason: say`the shoulder is ${show(height)} high; a corner of radius ${show(radius)} needs ${show(radius + clear)} so that the tip does not touch the lower step`,
    remedy: 'ask for a smaller radius, or step around the corner with another tool',
  }
}

function assemble(bench: Bench, feature: CornerFeature, tool: Tool, radius: Length, step: PlacedStep, at: Length) {
  const show = (length: Length) => exact('drawing', length, bench.units)
  const surface = -step.measured / 2
  const from = feature.cornerOf === 'end' ? 'the free end' : `the tailstock-side end of "${feature.cornerOf}"`
  return {
    feature,
    tool,
    undersize: null,
    surface: step.measured,
    zero: { fromEnd: at, diameter: step.measured },
    wanted: [arcPiece(at, at + radius, at + radius, surface + radius, radius, -1)],
    region: { from: at, to: at + radius },
    // The arc leaves the surfaces tangentially, so a very small error of depth shows as many times that error in a leg:
    // a leg is looked at and has no limits.
    dimensions: [
      { id: 'radius' as const, aim: radius, limits: feature.radius.limits },
      { id: 'legAlong' as const, aim: radius, limits: null },
      { id: 'legDown' as const, aim: radius, limits: null },
    ],
    cuts: cornerCuts(bench, feature, radius, edgeOf(tool, { surface: step.measured, depth: radius })),
    drawn: [
      say`convex radius ${asDrawn(feature.radius, bench.units)}`,
      feature.cornerOf === 'end'
        ? 'on the corner of the free end'
        : say`on the tailstock-side corner of "${feature.cornerOf}"`,
    ],
    layout: [
      {
        fromEnd: at + radius,
        from,
        step: feature.cornerOf === 'end' ? null : feature.cornerOf,
        downTheFace: true as const,
        distance: radius,
        say: say`along the cylinder; and a line ${show(radius)} below the surface, down the face`,
      },
    ],
    placing: { point: 'tailstock-corner' as const, against: { beside: at, gap: besideFace(bench.units) } },
    touch: {
      diameter: step.measured,
      at: { point: 'headstock-corner' as const, against: { past: at, by: tipByEye(bench.units) } },
    },
    notes: [
      'The legs are looked at, not held to: the arc leaves both surfaces so flatly that a thousandth in depth moves their ends by hundredths.',
    ],
  }
}

/**
 * First contact is at R(1 − 1/√2) on both axes. The contact widens about in proportion to the advance, so advances that
 * grow with the square root of the pair's number remove about the same amount each.
 */
function cornerCuts(bench: Bench, feature: CornerFeature, radius: Length, edge: Edge): CornerCuts {
  const start = radius * (1 - Math.SQRT1_2)
  const infeed = feature.cutting.infeed ?? defaultCornerInfeed(bench.units)
  const pairs = Math.max(2, bounded(Math.ceil(start / infeed)))
  const offsets = Array.from({ length: pairs }, (_, i) => start * (1 - Math.sqrt((i + 1) / pairs)))
  return {
    style: 'corner',
    edgeAt: (offset) => edgeDepth(edge.pieces, offset),
    radius,
    start,
    offsets,
    measureAt: Math.min(feature.cutting.leave ?? defaultLeave(bench.units, radius), start / 2),
  }
}

function cornerToGrind(bench: Bench, feature: CornerFeature, radius: Length): CornerTool {
  return {
    ...toGrind(bench, feature, radius, radius + pastTheDepth(bench.units)),
    blank: null,
    shape: 'corner',
    radius,
    legOnFace: null,
  }
}
