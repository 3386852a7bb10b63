import { bounded } from '../../moves/bounds.ts'
import { biteOf, type Cuts } from '../../moves/cuts.ts'
import type { Form } from '../../moves/form.ts'
import type { WantedDimension } from '../../moves/operation.ts'
import { arcPiece, linePiece } from '../../moves/pieces.ts'
import type { Placing } from '../../moves/placing.ts'
import type { Prose } from '../../phrase/phrase.ts'
import { asDrawn, exact, say } from '../../phrase/say.ts'
import type { SquareTool } from '../../tools/tool.ts'
import { formatExact } from '../../units/format.ts'
import type { Length } from '../../units/length.ts'
import { isRefusal, namedTool, toGrind } from '../choose-tool.ts'
import { type Bench, type Drafted, type PlacedStep, type Refusal, refuse } from '../draft.ts'
import type { GrooveFeature } from '../feature.ts'
import { drawnPlace, edgeLines, nearOf, placeDimensions, surfaceUnder } from '../place.ts'
import { reachFor, roughDepthsTo, touchedShoulder } from '../plunge.ts'
import {
  closeWidth,
  deepestSlot,
  defaultWallAllowance,
  leftFor,
  oneOffUndersize,
  peckFor,
  widestToGrind,
} from '../shop.ts'
import { type Fillets, filletsOf } from './corner.ts'
import { filletSteps } from './step-fillets.ts'

/** A square groove or neck: its drawing as lengths, its tool, and the plunges that rough and finish it. */
export function draftGroove(bench: Bench, feature: GrooveFeature): Drafted {
  const named = namedTool(bench, feature, 'square')
  if (isRefusal(named)) return { ok: false, refusal: named }
  const width = aimedWidth(bench, feature, named)
  if (isRefusal(width)) return { ok: false, refusal: width }
  const near = nearOf(bench, feature.place, width.aim)
  const far = near + width.aim
  const step = surfaceUnder(bench, near, far)
  if (isRefusal(step)) return { ok: false, refusal: step }
  const depth = depthOf(feature, step)
  if (depth <= 0)
    return refuse(
      'no-depth',
      say`the bottom diameter is not smaller than the stock, ${exact('drawing', step.measured, bench.units)}`,
      'correct the bottom diameter or the step',
    )
  const tool = named ?? squareToGrind(bench, feature, width.aim, depth, near, far)
  const fillets = filletsOf(bench, feature, tool, { width: far - near, depth })
  if (isRefusal(fillets)) return { ok: false, refusal: fillets }
  const notes = [...width.notes, ...fillets.notes]
  return { ok: true, draft: assemble(bench, feature, tool, step, { near, far, depth, fillets, notes }) }
}

type Shape = { near: Length; far: Length; depth: Length; fillets: Fillets; notes: readonly Prose[] }

function assemble(bench: Bench, feature: GrooveFeature, tool: SquareTool, step: PlacedStep, shape: Shape) {
  const { near, far, depth, fillets } = shape
  const width = tool.width.aim
  const undersize = far - near - width
  const shoulder = touchedShoulder(bench, near, far)
  const zeroAt = shoulder === 'headstock' ? far - width : near
  const base = shoulder === 'headstock' ? -undersize : 0
  return {
    feature,
    tool,
    undersize,
    surface: step.measured,
    zero: { fromEnd: zeroAt, diameter: step.measured },
    // No sharper than the drawing allows the corners to be, and cut at least to the roundest: between the two they are
    // checked against their limits.
    wanted: squareForm(near, far, depth - step.measured / 2, fillets.between[0], -step.measured / 2),
    atLeast: squareForm(near, far, depth - step.measured / 2, Math.min(fillets.between[1], depth), -step.measured / 2),
    region: { from: near, to: far },
    dimensions: dimensions(bench, feature, step, shape),
    cuts: cuts(bench, feature, tool, { undersize, base, depth, fillets }),
    drawn: drawn(bench, feature),
    layout: edgeLines(bench, feature.place, near, far),
    placing: placingOf(shoulder, near, far),
    touch: { diameter: step.measured, at: null },
    notes: shape.notes,
  }
}

const placingOf = (shoulder: 'headstock' | 'tailstock' | null, near: Length, far: Length): Placing =>
  shoulder === 'headstock'
    ? { point: 'headstock-corner', against: { face: far } }
    : { point: 'tailstock-corner', against: shoulder === null ? { line: near } : { face: near } }

/**
 * The width the plan aims at: the middle of the limits, or the tool's own width if it is wider and the limits allow it.
 */
function aimedWidth(
  bench: Bench,
  feature: GrooveFeature,
  tool: SquareTool | null,
): { aim: Length; notes: Prose[] } | Refusal {
  const aim = feature.width.aim
  if (tool === null || tool.width.aim <= aim) return { aim, notes: [] }
  const high = feature.width.limits?.[1] ?? aim
  const show = (length: Length) => exact('drawing', length, bench.units)
  if (tool.width.aim <= high)
    return {
      aim: tool.width.aim,
      notes: [
        say`The tool measures ${show(tool.width.aim)}: the groove comes out as wide as the tool, inside its limits.`,
      ],
    }
  return {
    code: 'tool-too-wide',
    reason: say`tool "${tool.name}" measures ${show(tool.width.aim)}, the groove may be ${show(high)} wide at most`,
    remedy: unitsMixed(tool.width.aim / aim)
      ? say`about 25 times too wide looks like inches and millimeters mixed: is units: ${bench.units} right for this drawing, and units: for the tools?`
      : say`grind the tool to ${show(aim)} or a few ${bench.units === 'inch' ? 'thousandths' : 'hundredths'} under, or take a narrower one`,
  }
}

/** A tool may be a few thousandths too wide, or three times too wide; near 25.4 times the units are mixed up. */
const unitsMixed = (times: number): boolean => times > 18 && times < 36

const depthOf = (feature: GrooveFeature, step: PlacedStep): Length =>
  feature.depth !== null ? feature.depth.aim : (step.measured - feature.bottomDiameter!.aim) / 2

function squareToGrind(
  bench: Bench,
  feature: GrooveFeature,
  width: Length,
  depth: Length,
  near: Length,
  far: Length,
): SquareTool {
  const under = bench.work === 'one-off' ? Math.min(oneOffUndersize(bench.units), width / 10) : 0
  const corner = cornerToGrind(feature)
  const usual = Math.round(Math.min(width - under, Math.max(widestToGrind(bench.units), 3 * corner)))
  // Between round corners there must be a flat to level the floor with; otherwise the tool has the groove's own width.
  const ground = usual - 2 * corner < corner / 2 ? width : usual
  const common = toGrind(bench, feature, ground, reachFor(bench, near, far, depth))
  return {
    ...common,
    shape: 'square',
    width: { nominal: ground, limits: null, aim: ground, text: formatExact(ground, bench.units) },
    cornerRadius: corner,
  }
}

/** Corners as drawn; sharp if the drawing only gives their largest radius. */
const cornerToGrind = ({ cornerRadius }: GrooveFeature): Length =>
  cornerRadius === null || cornerRadius.limits?.[0] === 0 ? 0 : cornerRadius.aim

/** Walls at near and far, a floor, and the corners of the floor rounded; d = −radius. */
export function squareForm(near: Length, far: Length, floor: Length, corner: Length, surface: Length): Form {
  const round = Math.min(corner, (far - near) / 2)
  if (round <= 0 || floor - round < surface) return [linePiece(near, floor, far, floor)]
  return [
    arcPiece(near, near + round, near + round, floor - round, round, 1),
    linePiece(near + round, floor, far - round, floor),
    arcPiece(far - round, far, far - round, floor - round, round, 1),
  ]
}

function dimensions(bench: Bench, feature: GrooveFeature, step: PlacedStep, shape: Shape): WantedDimension[] {
  const width = shape.far - shape.near
  return [
    { id: 'width', aim: width, limits: feature.width.limits },
    { id: 'depth', aim: shape.depth, limits: feature.depth?.limits ?? null },
    {
      id: 'bottomDiameter',
      aim: step.measured - 2 * shape.depth,
      limits: feature.bottomDiameter?.limits ?? null,
      fixed: feature.bottomDiameter !== null,
    },
    // If it is round from wall to wall it has no floor.
    ...(width > 2 * shape.fillets.radius ? [{ id: 'flatness' as const, aim: 0, limits: null }] : []),
    ...cornerRadius(feature, shape.fillets),
    ...placeDimensions(bench, feature.place, shape.near, width),
  ]
}

/** Sharp corners are not measured if the drawing allows sharp ones. */
function cornerRadius({ cornerRadius: drawn }: GrooveFeature, { radius }: Fillets): WantedDimension[] {
  return drawn === null || radius <= 0 ? [] : [{ id: 'cornerRadius', aim: radius, limits: drawn.limits }]
}

/** Positions evenly spaced over the width that the tool is undersize, each overlapping the last. */
function cuts(
  bench: Bench,
  feature: GrooveFeature,
  tool: SquareTool,
  at: { undersize: Length; base: Length; depth: Length; fillets: Fillets },
): Cuts {
  const { cutting } = feature
  if (at.fillets.stepped)
    return filletSteps(bench, feature, {
      R: at.fillets.radius,
      r: tool.cornerRadius,
      edge: tool.width.aim,
      depth: at.depth,
      first: at.base,
      last: at.base + at.undersize,
    })
  const flat = tool.width.aim - 2 * tool.cornerRadius
  const spacing = flat - Math.min(cutting.overlap ?? tool.width.aim / 10, flat / 2)
  const leave = leftFor(bench.units, cutting, at.depth)
  const peck = peckFor(cutting.peck, tool.width.aim, at.depth)
  const walls = wallsOf(bench, feature, tool, { ...at, leave, peck })
  const sides = leftOnSides(bench, feature, walls, at.undersize)
  const layer = at.depth > deepestSlot(tool.width.aim) ? deepestSlot(tool.width.aim) : null
  return {
    style: 'plunge',
    roughPlaces: spread(at.base + sides, at.base + at.undersize - sides, Math.max(spacing, tool.cornerRadius / 2)),
    first: at.base,
    last: at.base + at.undersize,
    spacing,
    depth: at.depth,
    roughDepths: leave > 0 || layer !== null ? roughDepthsTo(at.depth - leave, biteOf(cutting.infeed, peck)) : [],
    infeed: cutting.infeed,
    walls,
    peck,
    layer,
  }
}

/** Several tool widths wide: from here on a wall gets a plunge of its own. Common practice, no source. */
const SEVERAL = 3

/** A wall has a plunge of its own only where roughing goes before it and leaves a floor that one bite takes. */
function wallsOf(
  { carriageByEye, units }: Bench,
  { walls, width, cutting }: GrooveFeature,
  tool: SquareTool,
  { undersize, leave, depth, peck }: { undersize: Length; leave: Length; depth: Length; peck: Length | null },
): 'plunged' | 'swept' {
  const possible = undersize > 0 && leave > 0 && leave <= Math.min(depth / 2, peck ?? depth)
  const toLines = cutting.sideFeed === 'lines' || (cutting.sideFeed === 'carriage' && carriageByEye)
  if (!possible || toLines) return 'swept'
  const several = undersize + tool.width.aim >= SEVERAL * tool.width.aim
  const close = width.limits !== null && width.limits[1] - width.limits[0] < closeWidth(units)
  return walls ?? (several || close ? 'plunged' : 'swept')
}

/** On each wall; of a groove hardly wider than its tool a third of what the tool is under, so that both walls get some. */
function leftOnSides(bench: Bench, { cutting }: GrooveFeature, walls: 'plunged' | 'swept', undersize: Length): Length {
  const usual = walls === 'plunged' ? Math.min(defaultWallAllowance(bench.units), undersize / 3) : 0
  return Math.min(cutting.leaveSides ?? usual, undersize / 2)
}

/** Evenly spaced from `from` to `to`, no further apart than `spacing`. */
function spread(from: Length, to: Length, spacing: Length): Length[] {
  const gaps = bounded(Math.max(0, Math.ceil((to - from) / spacing - 1e-9)))
  return gaps === 0 ? [from] : Array.from({ length: gaps + 1 }, (_, i) => from + ((to - from) * i) / gaps)
}

const drawn = ({ units }: Bench, feature: GrooveFeature): Prose[] => [
  say`${asDrawn(feature.width, units)} wide`,
  feature.depth !== null
    ? say`${asDrawn(feature.depth, units)} deep`
    : say`bottom diameter ${asDrawn(feature.bottomDiameter!, units)}`,
  ...(feature.cornerRadius === null ? [] : [say`corner radius ${asDrawn(feature.cornerRadius, units)}`]),
  drawnPlace(units, feature.place),
]
