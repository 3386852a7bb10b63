import type { StepCuts, StepPoint } from '../../moves/cuts.ts'
import { exact, say } from '../../phrase/say.ts'
import { roundHalfWidth } from '../../tools/round/edge.ts'
import type { RoundTool, SquareTool } from '../../tools/tool.ts'
import type { Length } from '../../units/length.ts'
import type { Bench, PlacedStep, Refusal } from '../draft.ts'
import type { CornerFeature } from '../feature.ts'
import { besideFace, defaultCusp, defaultFiledCusp, defaultLeave, defaultStepInfeed } from '../shop.ts'
import { roundRidge } from './round-ridge.ts'

/**
 * The tool that steps around a corner of radius R: a round end of radius r, or (r = 0) the sharp headstock-side corner
 * of a square edge. pm.
 */
export type Stepper = {
  readonly tool: RoundTool | SquareTool
  readonly r: Length
  /** From the reference point to the headstock end of the edge, which touches the face when the zero is set. */
  readonly beyond: Length
}

/**
 * The center of the round end (or the sharp corner) follows a circle of R + r about the center of the corner. At φ from
 * the cylinder it is R − (R + r) sin φ from the face and (R + r)(1 − cos φ) deep. Places count from where the headstock
 * end of the edge meets the face, so place = (R + r)(1 − sin φ), from 0 at the face to R + r where the tool only
 * touches the cylinder.
 */
export function cornerSteps(bench: Bench, feature: CornerFeature, R: Length, stepper: Stepper): StepCuts {
  const { cutting } = feature
  const { r, beyond, tool } = stepper
  const path = R + r
  const [low, high] = [0, path]
  const depthAt = (place: Length) => path - Math.sqrt(Math.max(0, path * path - (path - place) ** 2))
  const cusp = (tool.shape === 'square' ? defaultFiledCusp : defaultCusp)(bench.units)
  const face = beyond
  const deepAt = (along: Length) => R - Math.sqrt(Math.max(0, R * R - (R - (along - face)) ** 2))
  return {
    style: 'steps',
    first: low,
    last: high,
    touches: [low, high],
    depth: path,
    depthAt,
    between: (near, far, deep = [depthAt(near), depthAt(far)]) => cornerRidge(R, stepper, [near, far], deep),
    ends: {
      before: (place, deep) => atFace(stepper, place, deep),
      after: (place, deep) => atCylinder(stepper, place, deep),
    },
    outside: ({ along, deep }) => Math.hypot(along - face - R, deep - R) - R,
    formAt: (along) => (along >= face + R ? 0 : along <= face ? R : deepAt(along)),
    cusp: cutting.cusp ?? cusp,
    cuspGiven: cutting.cusp !== null,
    leave: Math.min(cutting.leave ?? defaultLeave(bench.units, R), R),
    peck: cutting.peck ?? edgeWidth(tool),
    infeed: cutting.infeed ?? defaultStepInfeed(bench.units),
    roughSpacing: r > 0 ? r : beyond * 0.8,
    middle: null,
    edgeAt: (offset) => (r > 0 ? Math.sqrt(Math.max(0, r * r - offset * offset)) - r : 0),
    workFrom: face,
    besideFace: r + besideFace(bench.units),
  }
}

const edgeWidth = (tool: Stepper['tool']): Length =>
  tool.shape === 'square' ? tool.width.aim : 2 * roundHalfWidth(tool.radius, tool.edgeWidth)

type Two = readonly [near: Length, far: Length]

/**
 * Round: where the circles cross; if they do not meet, the metal between them stays as far out as their path. Square:
 * the floor of the shallower place meets the wall of the deeper, about ½·R·δ·sin 2φ out.
 */
function cornerRidge(R: Length, stepper: Stepper, places: Two, deep: Two): StepPoint {
  const { r, beyond } = stepper
  if (r === 0) return { along: places[0] + beyond, deep: deep[1] }
  const top = roundRidge(r, places, deep) ?? { along: beyond - r, deep: R }
  // They meet above the surface: it stays uncut from where the edge at the first of them leaves it.
  return top.deep < 0 ? atCylinder(stepper, places[0], deep[0]) : top
}

/** Metal left at the face below the first place: from where the edge leaves the face. */
function atFace({ r, beyond }: Stepper, place: Length, deep: Length): StepPoint {
  const inside = Math.min(r, Math.abs(place - r))
  const edge = r > 0 ? Math.sqrt(Math.max(0, r * r - inside * inside)) - r : 0
  return { along: beyond, deep: deep + edge }
}

/** Metal left on the cylinder after the last place: from where the edge leaves the surface. */
function atCylinder({ r, beyond }: Stepper, place: Length, deep: Length): StepPoint {
  const above = r - Math.min(r, deep)
  const reach = r > 0 ? Math.sqrt(Math.max(0, r * r - above * above)) - r : 0
  return { along: place + beyond + reach, deep: 0 }
}

/** The round end is used from its tip to its headstock side; a square edge by its sharp corner. */
export function stepperOf(bench: Bench, tool: RoundTool | SquareTool): Stepper | Refusal {
  const show = (length: Length) => exact('drawing', length, bench.units)
  if (tool.shape === 'square') {
    if (tool.cornerRadius <= 0) return { tool, r: 0, beyond: tool.width.aim }
    return {
      code: 'corner-not-sharp',
      reason: say`the corners of tool "${tool.name}" are rounded by ${show(tool.cornerRadius)}; stepping around a corner with a square tool is done by its sharp corner`,
      remedy: 'take a square tool with sharp corners, or a round tool',
    }
  }
  const half = roundHalfWidth(tool.radius, tool.edgeWidth)
  if (half >= tool.radius) return { tool, r: tool.radius, beyond: tool.radius }
  return {
    code: 'edge-too-narrow',
    reason: say`stepping around a corner uses the round end from its tip to its side, ${show(tool.radius)}; the edge of tool "${tool.name}" is round over ${show(half)} to each side only`,
    remedy: say`grind the round end ${show(2 * tool.radius)} wide`,
  }
}

/** What only a stepped corner has: where the zero is touched off, one radius to look at, and the steps. */
export function steppedCorner(
  bench: Bench,
  feature: CornerFeature,
  R: Length,
  stepper: Stepper,
  { at, step }: { readonly at: Length; readonly step: PlacedStep },
) {
  const { tool, beyond } = stepper
  const show = (length: Length) => exact('drawing', length, bench.units)
  const edge =
    tool.shape === 'square'
      ? 'the sharp headstock-side corner of a square tool'
      : say`a round tool of ${show(tool.radius)}`
  return {
    zeroFromEnd: at - beyond,
    cuts: cornerSteps(bench, feature, R, stepper),
    dimensions: [{ id: 'radius' as const, aim: R, limits: feature.radius.limits }],
    placing: { point: 'headstock-corner' as const, against: { beside: at, gap: besideFace(bench.units) } },
    touch: {
      diameter: step.measured,
      at: { point: 'tip' as const, against: { over: [at + R, Math.min(at + step.length, at + 3 * R)] as const } },
    },
    notes: [
      say`No corner tool is used: ${edge} steps around the corner.`,
      'By carriage the tool comes beside the face with a little gap; the compound then feeds it forward until it touches.',
    ],
  }
}
