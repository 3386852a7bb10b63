import type { StepCuts } from '../../moves/cuts.ts'
import { exact, say } from '../../phrase/say.ts'
import { roundHalfWidth } from '../../tools/round/edge.ts'
import type { RoundTool } from '../../tools/tool.ts'
import type { Length } from '../../units/length.ts'
import type { Bench, Refusal } from '../draft.ts'
import type { ConcaveFeature } from '../feature.ts'
import { belowMeasuring, defaultCusp, defaultLeave, defaultStepInfeed } from '../shop.ts'
import { roundRidge } from './round-ridge.ts'

/** A concave groove of radius R, cut step by step with a round end of radius r: from its middle on the surface. pm. */
export type SteppedGroove = {
  readonly R: Length
  readonly r: Length
  /** How wide the round end is ground. */
  readonly edge: Length
  readonly width: Length
  readonly depth: Length
}

/**
 * The tip follows a circle of R − r: at φ from the deepest point it is (R − r) sin φ along and h − (R − r)(1 − cos φ)
 * deep. Places are tip places, so sin φ = place / (R − r); beyond the quarter (by a part of a mark) the tool stays at
 * the wall's depth.
 */
export function concaveSteps(bench: Bench, feature: ConcaveFeature, groove: SteppedGroove): StepCuts {
  const { R, r, width, depth } = groove
  const { cutting } = feature
  const path = R - r
  const outermost = (path * width) / (2 * R)
  const depthAt = (place: Length) => depth - path + Math.sqrt(Math.max(0, path * path - place * place))
  return {
    style: 'steps',
    first: -outermost,
    last: outermost,
    touches: [-path, path],
    depth,
    depthAt,
    between: (near, far, deep = [depthAt(near), depthAt(far)]) =>
      roundRidge(r, [near, far], deep) ?? { along: 0, deep: depth - R },
    ends: null,
    outside: ({ along, deep }) => R - Math.hypot(along, deep - (depth - R)),
    formAt: (along) => Math.max(0, depth - R + Math.sqrt(Math.max(0, R * R - along * along))),
    cusp: cutting.cusp ?? defaultCusp(bench.units),
    cuspGiven: cutting.cusp !== null,
    leave: Math.min(cutting.leave ?? defaultLeave(bench.units, depth), depth),
    peck: cutting.peck ?? groove.edge,
    infeed: cutting.infeed ?? defaultStepInfeed(bench.units),
    roughSpacing: r,
    middle: 0,
    edgeAt: (offset) => Math.sqrt(Math.max(0, r * r - offset * offset)) - r,
    workFrom: Number.NEGATIVE_INFINITY,
    besideFace: null,
  }
}

/** The contact moves over the edge as the tool goes along the arc: r·W/2R to each side of the tip. */
export function edgeForSteps(bench: Bench, tool: RoundTool, { R, r, width }: SteppedGroove): Refusal | null {
  const needed = (r * width) / (2 * R)
  const half = roundHalfWidth(tool.radius, tool.edgeWidth)
  // A rounding error of a picometer is allowed: a half circle uses the whole end.
  if (half >= needed - 1) return null
  const show = (length: Length) => exact('drawing', length, bench.units)
  return {
    code: 'edge-too-narrow',
    reason: say`stepping along this groove uses the round end ${show(needed)} to each side of its tip; the edge of tool "${tool.name}" is ${show(2 * half)} wide in all`,
    // Up to what can be measured on a tool.
    remedy: say`grind the round end at least ${show(Math.ceil((2 * needed) / belowMeasuring) * belowMeasuring)} wide`,
  }
}
