import type { PlungeCuts } from '../../moves/cuts.ts'
import type { Form } from '../../moves/form.ts'
import type { WantedDimension } from '../../moves/operation.ts'
import { linePiece } from '../../moves/pieces.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Degrees } from '../../units/dimension.ts'
import { formatAngle, formatExact, formatLength } from '../../units/format.ts'
import { INCH, type Length } from '../../units/length.ts'
import { isRefusal, namedTool, toGrind } from '../choose-tool.ts'
import { type Bench, type Drafted, type PlacedStep, type Refusal, refuse } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { drawnPlace, edgeLines, nearOf, placeDimensions, surfaceUnder } from '../place.ts'
import { roughDepthsTo } from '../plunge.ts'
import { belowMeasuring, defaultLeave, defaultVeeInfeed, defaultVeeMargin, pastTheDepth } from '../shop.ts'
import { solveV, type VForm } from './form.ts'
import { shrinkingInfeeds } from './infeeds.ts'

/** A V-groove, sharp or with a flat root: the form from any two dimensions, roughed and finished at the near and the far flank. */
export function draftVGroove(bench: Bench, feature: VGrooveFeature): Drafted {
  const named = namedTool(bench, feature, 'vee')
  if (isRefusal(named)) return { ok: false, refusal: named }
  const angle = aimedAngle(feature, named)
  if (isRefusal(angle)) return { ok: false, refusal: angle }
  const half = angle / 2
  const t = Math.tan(half * (Math.PI / 180))
  const nominalStep = stepOf(bench, feature, t)
  if (isRefusal(nominalStep)) return { ok: false, refusal: nominalStep }
  const { step, drawn } = nominalStep
  const form = solved(bench, feature, half, step)
  if (isRefusal(form)) return { ok: false, refusal: form }
  const nosed = withNose(bench, feature, form, named, t)
  if (isRefusal(nosed)) return { ok: false, refusal: nosed }
  // The form stands where it is drawn, from the nominal diameter; stock that measures smaller meets it further down.
  const drop = (step.diameter.nominal - step.measured) / 2
  const cut = { depth: nosed.depth - drop, width: nosed.width - 2 * drop * t, root: nosed.root }
  const near = nearOf(bench, feature.place, drawn) + (drawn - nosed.width) / 2 + drop * t
  if (cut.depth <= 0)
    return refuse(
      'no-depth',
      'the measured stock is already smaller than the bottom of the V',
      'measure the stock again',
    )
  const tool = named ?? veeToGrind(bench, feature, angle, cut)
  return { ok: true, draft: assemble(bench, feature, tool, step, { ...cut, near, t, angle, drop, notes: nosed.notes }) }
}

type Shape = VForm & { near: Length; t: number; drop: Length; angle: Degrees; notes: readonly string[] }

function assemble(bench: Bench, feature: VGrooveFeature, tool: VeeTool, step: PlacedStep, shape: Shape) {
  const { near, width, depth, t } = shape
  const show = (length: Length) => formatExact(length, bench.units)
  return {
    feature,
    tool,
    undersize: shape.root - tool.nose,
    surface: step.measured,
    zero: { fromEnd: near, diameter: step.measured },
    wanted: vForm(near, shape, -step.measured / 2),
    region: { from: near, to: near + width },
    dimensions: dimensions(bench, feature, step, shape),
    cuts: cuts(bench, feature, tool, shape),
    drawn: drawnSizes(feature),
    layout: edgeLines(bench, feature.place, near, near + width),
    align: { point: 'tailstock-side corner of the nose', to: `the ${formatLength(near, bench.units)} line` },
    touch: 'the nose touches the turning surface',
    placedBy: 'line' as const,
    notes: [
      ...shape.notes,
      `The near flank reaches its line when the tool stands ${formatLength(depth * t, bench.units)} ${bench.units === 'inch' ? 'in' : 'mm'} past its zero.`,
      ...(shape.drop === 0
        ? []
        : [
            `Drawn on ${show(step.diameter.nominal)} diameter; on the measured stock width and depth, and their limits, are less by what that takes off.`,
          ]),
    ],
  }
}

function aimedAngle(feature: VGrooveFeature, tool: VeeTool | null): Degrees | Refusal {
  const { aim, limits } = feature.angle
  if (tool === null || Math.abs(tool.angle - aim) < 1e-6) return aim
  if (limits !== null && tool.angle >= limits[0] && tool.angle <= limits[1]) return tool.angle
  return {
    code: 'wrong-angle',
    reason: `tool "${tool.name}" is ground to ${formatAngle(tool.angle)}, the drawing asks for ${formatAngle(aim)}`,
    remedy: `grind the tool to ${formatAngle(aim)} included, ${formatAngle(aim / 2)} a side`,
  }
}

/** The step under the V, found by where the drawing places its edges; `drawn` is the width at the nominal surface. */
function stepOf(bench: Bench, feature: VGrooveFeature, t: number): { step: PlacedStep; drawn: Length } | Refusal {
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

/** The drawing's dimensions brought to the nominal surface. */
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

function solved(bench: Bench, feature: VGrooveFeature, half: Degrees, step: PlacedStep): VForm | Refusal {
  const show = (length: Length) => formatExact(length, bench.units)
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
        reason:
          `width ${show(width)}, depth ${show(depth)} and root ${show(root)} contradict each other at ${formatAngle(2 * half)}: width and depth give a root of ${show(found)}; ` +
          `width and root a depth of ${show((width - root) / (2 * t))}; depth and root a width of ${show(root + 2 * depth * t)}`,
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
      reason: `a V of ${formatAngle(2 * half)}, ${show(form.width)} wide, comes to a point at ${show(form.width / (2 * t))}: it cannot be ${show(form.depth)} deep`,
      remedy: 'correct the width, the depth or the angle',
    }
  return { ...form, root: Math.max(0, form.root) }
}

/** A real nose has a flat: it must fit the root, or on a V drawn sharp the given dimension is held and the flat that remains is stated. */
function withNose(
  bench: Bench,
  feature: VGrooveFeature,
  form: VForm,
  tool: VeeTool | null,
  t: number,
): (VForm & { notes: string[] }) | Refusal {
  if (tool === null || tool.nose <= form.root) return { ...form, notes: [] }
  const show = (length: Length) => formatExact(length, bench.units)
  if (tool.nose - form.root <= belowMeasuring && form.root > 0)
    return { width: form.width, depth: (form.width - tool.nose) / (2 * t), root: tool.nose, notes: [] }
  if (form.root > INCH / 1000)
    return {
      code: 'nose-too-wide',
      reason: `the nose of tool "${tool.name}" measures ${show(tool.nose)}, the root of the V is ${show(form.root)}`,
      remedy: `grind the nose to ${show(form.root)} or less`,
    }
  const notes = [`Drawn sharp; the nose leaves a flat of ${show(tool.nose)}.`]
  if (feature.width === null)
    return { width: form.depth * 2 * t + tool.nose, depth: form.depth, root: tool.nose, notes }
  if (form.width <= tool.nose)
    return {
      code: 'nose-too-wide',
      reason: `the nose of tool "${tool.name}" measures ${show(tool.nose)}, the whole V ${show(form.width)}`,
      remedy: 'grind a sharper nose',
    }
  return { width: form.width, depth: (form.width - tool.nose) / (2 * t), root: tool.nose, notes }
}

/** Two flanks and a flat; d = −radius. */
function vForm(near: Length, form: VForm & { t: number }, surface: Length): Form {
  const run = form.depth * form.t
  const floor = surface + form.depth
  const far = near + form.width
  const flanks = [linePiece(near, surface, near + run, floor), linePiece(far - run, floor, far, surface)] as const
  return form.root > 0 ? [flanks[0], linePiece(near + run, floor, far - run, floor), flanks[1]] : [...flanks]
}

/** As an inspector meets them on the real surface: limits given from the nominal surface move with it. */
function dimensions(bench: Bench, feature: VGrooveFeature, step: PlacedStep, shape: Shape): WantedDimension[] {
  const at = feature.widthAt
  const width = at === null ? shape.width : shape.width - (step.measured - at) * shape.t
  const widthShift = at === null ? 2 * shape.drop * shape.t : 0
  return [
    {
      id: 'width',
      aim: width,
      limits: lowered(feature.width?.limits, widthShift),
      ...(at !== null && { atDiameter: at }),
    },
    { id: 'depth', aim: shape.depth, limits: lowered(feature.depth?.limits, shape.drop) },
    {
      id: 'bottomDiameter',
      aim: step.measured - 2 * shape.depth,
      limits: feature.bottomDiameter?.limits ?? null,
      fixed: true,
    },
    { id: 'root', aim: shape.root, limits: feature.root?.limits ?? null },
    { id: 'angle', aim: shape.angle, limits: feature.angle.limits },
    ...placeDimensions(bench, feature.place, shape.near, shape.width),
  ]
}

const lowered = (limits: readonly [Length, Length] | null | undefined, by: Length): readonly [Length, Length] | null =>
  limits == null ? null : [limits[0] - by, limits[1] - by]

function cuts(bench: Bench, feature: VGrooveFeature, tool: VeeTool, shape: Shape): PlungeCuts {
  const { cutting } = feature
  const first = shape.depth * shape.t
  const over = Math.max(0, shape.root - tool.nose)
  const margin = Math.min(cutting.leaveSides ?? defaultVeeMargin(bench.units), over / 2)
  const leave = Math.min(cutting.leave ?? defaultLeave(bench.units, shape.depth), shape.depth)
  const infeed = cutting.infeed ?? defaultVeeInfeed(bench.units)
  const spacing = tool.nose > 0 ? tool.nose * 0.9 : over || 1
  const gaps = Math.max(0, Math.ceil((over - 2 * margin) / spacing - 1e-9))
  const places = Array.from(
    { length: gaps + 1 },
    (_, i) => first + margin + (gaps === 0 ? 0 : ((over - 2 * margin) * i) / gaps),
  )
  return {
    style: 'plunge',
    roughPlaces: places,
    first,
    last: first + over,
    spacing,
    depth: shape.depth,
    roughDepths: leave > 0 ? shrinkingInfeeds(roughDepthsTo, shape.depth - leave, infeed, tool.nose, shape.t) : [],
  }
}

const drawnSizes = (feature: VGrooveFeature): string[] => [
  `${/^[\d.]+$/.test(feature.angle.text) ? `${feature.angle.text}°` : feature.angle.text} included`,
  ...(feature.width !== null ? [`${feature.width.text} wide`] : []),
  ...(feature.depth !== null ? [`${feature.depth.text} deep`] : []),
  ...(feature.bottomDiameter !== null ? [`bottom diameter ${feature.bottomDiameter.text}`] : []),
  ...(feature.root !== null ? [`root ${feature.root.text}`] : []),
  drawnPlace(feature.place),
]

/** Ground no further back than the depth asks for: a longer flank would meet a shoulder close by. The blank is as wide as the ground edge. */
function veeToGrind(bench: Bench, feature: VGrooveFeature, angle: Degrees, form: VForm): VeeTool {
  const common = toGrind(bench, feature, form.width, form.depth + pastTheDepth(bench.units))
  return { ...common, blank: null, shape: 'vee', angle, nose: Math.floor(form.root) }
}
