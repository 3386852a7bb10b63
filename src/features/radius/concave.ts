import { arcPiece } from '../../moves/pieces.ts'
import type { Prose } from '../../phrase/phrase.ts'
import { asDrawn, exact, say } from '../../phrase/say.ts'
import { roundHalfWidth } from '../../tools/round/edge.ts'
import type { RoundTool } from '../../tools/tool.ts'
import type { Length } from '../../units/length.ts'
import { isRefusal, namedTool, toGrind } from '../choose-tool.ts'
import { type Bench, type Drafted, type PlacedStep, type Refusal, refuse } from '../draft.ts'
import type { ConcaveFeature } from '../feature.ts'
import { drawnPlace, edgeLines, nearOf, placeDimensions, surfaceUnder } from '../place.ts'
import { reachFor, roughDepthsTo } from '../plunge.ts'
import { belowMeasuring, leftFor } from '../shop.ts'
import { toolInWork } from './raked.ts'
import { solveConcave } from './solve-concave.ts'
import { concaveSteps, edgeForSteps } from './step-concave.ts'

/** A concave groove cut by one plunge of a form tool of its own radius, or cut step by step with a smaller one. */
export function draftConcave(bench: Bench, feature: ConcaveFeature): Drafted {
  const ground = namedTool(bench, feature, 'round')
  if (isRefusal(ground)) return { ok: false, refusal: ground }
  const named = ground === null ? null : toolInWork(bench, feature, ground)
  if (isRefusal(named)) return { ok: false, refusal: named }
  const radius = aimedRadius(bench, feature, named)
  if (isRefusal(radius)) return { ok: false, refusal: radius }
  const size = solveConcave(bench, feature, radius.aim)
  if (isRefusal(size)) return { ok: false, refusal: size }
  const near = nearOf(bench, feature.place, size.width)
  const step = surfaceUnder(bench, near, near + size.width)
  if (isRefusal(step)) return { ok: false, refusal: step }
  const tool = ground ?? roundToGrind(bench, feature, radius.aim, size.depth, near, near + size.width)
  const shape = { near, radius: radius.aim, ...size, notes: radius.notes }
  if (radius.stepped) {
    const groove = {
      R: radius.aim,
      r: (named ?? tool).radius,
      edge: 2 * roundHalfWidth(tool.radius, tool.edgeWidth),
      ...size,
    }
    const narrow = edgeForSteps(bench, tool, groove)
    if (narrow !== null) return { ok: false, refusal: narrow }
    const draft = { ...assemble(bench, feature, tool, step, shape), cuts: concaveSteps(bench, feature, groove) }
    return { ok: true, draft }
  }
  if (2 * roundHalfWidth(tool.radius, tool.edgeWidth) < size.width)
    return refuse(
      'edge-too-narrow',
      say`the edge of tool "${tool.name}" is ${exact('drawing', tool.edgeWidth!, bench.units)} wide, the groove ${exact('drawing', size.width, bench.units)}`,
      'grind the edge wider than the groove',
    )
  return { ok: true, draft: assemble(bench, feature, tool, step, shape) }
}

type Shape = { near: Length; radius: Length; width: Length; depth: Length; notes: readonly Prose[] }

function assemble(bench: Bench, feature: ConcaveFeature, tool: RoundTool, step: PlacedStep, shape: Shape) {
  const { near, width, depth, radius } = shape
  const middle = near + width / 2
  const leave = leftFor(bench.units, feature.cutting, depth)
  const worked = (length: Length) => exact('planned', length, bench.units)
  return {
    feature,
    tool,
    undersize: null,
    surface: step.measured,
    zero: { fromEnd: middle, diameter: step.measured },
    wanted: [arcPiece(near, near + width, middle, depth - radius - step.measured / 2, radius, 1)],
    region: { from: near, to: near + width },
    dimensions: [
      { id: 'width' as const, aim: width, limits: feature.width?.limits ?? null },
      { id: 'depth' as const, aim: depth, limits: feature.depth?.limits ?? null },
      { id: 'bottomDiameter' as const, aim: step.measured - 2 * depth, limits: null },
      { id: 'radius' as const, aim: radius, limits: feature.radius.limits },
      ...placeDimensions(bench, feature.place, near, width),
    ],
    cuts: {
      style: 'plunge' as const,
      roughPlaces: [0],
      first: 0,
      last: 0,
      spacing: width,
      depth,
      roughDepths: leave > 0 ? roughDepthsTo(depth - leave, feature.cutting.infeed) : [],
      infeed: feature.cutting.infeed,
      walls: 'swept' as const,
      peck: feature.cutting.peck,
      layer: null,
    },
    drawn: [
      say`radius ${asDrawn(feature.radius, bench.units)}`,
      feature.width !== null
        ? say`${asDrawn(feature.width, bench.units)} wide`
        : say`${worked(width)} wide (from radius and depth)`,
      feature.depth !== null
        ? say`${asDrawn(feature.depth, bench.units)} deep`
        : say`${worked(depth)} deep (from radius and width)`,
      drawnPlace(bench.units, feature.place),
    ],
    layout: edgeLines(bench, feature.place, near, near + width),
    placing: { point: 'tip' as const, against: { between: [near, near + width] as const } },
    touch: { diameter: step.measured, at: null },
    notes: shape.notes,
  }
}

/**
 * The radius the plan aims at: the drawing's, or the tool's own if it is within the limits (or, without limits, as
 * close as a radius can be measured); a smaller tool steps.
 */
function aimedRadius(
  bench: Bench,
  feature: ConcaveFeature,
  tool: RoundTool | null,
): { aim: Length; notes: Prose[]; stepped: boolean } | Refusal {
  const aim = feature.radius.aim
  if (tool === null || tool.radius === aim) return { aim, notes: [], stepped: false }
  const show = (length: Length) => exact('drawing', length, bench.units)
  const limits = feature.radius.limits
  if (limits !== null && tool.radius >= limits[0] && tool.radius <= limits[1])
    return {
      aim: tool.radius,
      notes: [say`The form carries the tool's own radius, ${show(tool.radius)}, inside its limits.`],
      stepped: false,
    }
  if (Math.abs(tool.radius - aim) <= belowMeasuring) return { aim: tool.radius, notes: [], stepped: false }
  if (tool.radius > aim)
    return {
      code: 'radius-too-large',
      reason: say`the radius of tool "${tool.name}" is ${show(tool.radius)}; the largest that fits this form is ${show(limits?.[1] ?? aim)}`,
      remedy: say`grind the radius to ${show(aim)}`,
    }
  return {
    aim,
    notes: [say`The tool's radius is ${show(tool.radius)}, the form's ${show(aim)}: the tool steps along the arc.`],
    stepped: true,
  }
}

function roundToGrind(
  bench: Bench,
  feature: ConcaveFeature,
  radius: Length,
  depth: Length,
  near: Length,
  far: Length,
): RoundTool {
  return {
    ...toGrind(bench, feature, 2 * radius, reachFor(bench, near, far, Math.max(depth, radius))),
    shape: 'round',
    radius,
    edgeWidth: null,
  }
}
