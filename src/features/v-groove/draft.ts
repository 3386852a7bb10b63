import type { Prose } from '../../phrase/phrase.ts'
import { about, asDrawn, degrees, exact, say } from '../../phrase/say.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Degrees } from '../../units/dimension.ts'
import { INCH, type Length, MM } from '../../units/length.ts'
import { isRefusal, namedTool, toGrind } from '../choose-tool.ts'
import { type Bench, type Drafted, type PlacedStep, refuse } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { drawnPlace, edgeLines, nearOf } from '../place.ts'
import { pastTheDepth } from '../shop.ts'
import { flankAngle, flankCuts, flankRefusal } from './flank-cuts.ts'
import type { VForm } from './form.ts'
import { plungeCuts } from './plunge-cuts.ts'
import { toolInWork } from './raked.ts'
import { aimedAngle, solved, stepOf, withNose } from './solved.ts'
import { dimensions, type Shape, vForm } from './wanted.ts'

/**
 * A V-groove, sharp or with a flat root: the form from any two dimensions, roughed and finished at the near and the far
 * flank.
 */
export function draftVGroove(bench: Bench, feature: VGrooveFeature): Drafted {
  const ground = namedTool(bench, feature, 'vee')
  if (isRefusal(ground)) return { ok: false, refusal: ground }
  const named = ground === null ? null : toolInWork(bench, feature, ground)
  if (isRefusal(named)) return { ok: false, refusal: named }
  const angle = aimedAngle(feature, named)
  if (isRefusal(angle)) return { ok: false, refusal: angle }
  const swung = feature.method === 'flank-feed' ? flankRefusal(feature, angle) : null
  if (swung !== null) return { ok: false, refusal: swung }
  const half = angle / 2
  const t = Math.tan(half * (Math.PI / 180))
  const nominalStep = stepOf(bench, feature, t)
  if (isRefusal(nominalStep)) return { ok: false, refusal: nominalStep }
  const { step, drawn } = nominalStep
  const form = solved(bench, feature, half, step)
  if (isRefusal(form)) return { ok: false, refusal: form }
  const nosed = withNose(bench, feature, form, named, t)
  if (isRefusal(nosed)) return { ok: false, refusal: nosed }
  // The form is where it is drawn, from the nominal diameter; the surface of smaller stock meets it further down.
  const drop = (step.diameter.nominal - step.measured) / 2
  const cut = { depth: nosed.depth - drop, width: nosed.width - 2 * drop * t, root: nosed.root }
  const near = nearOf(bench, feature.place, drawn) + (drawn - nosed.width) / 2 + drop * t
  if (cut.depth <= 0)
    return refuse(
      'no-depth',
      'the measured stock is already smaller than the bottom of the V',
      'measure the stock again',
    )
  const floor = step.measured - 2 * cut.depth
  if (feature.widthAt !== null && feature.widthAt <= floor)
    return refuse(
      'width-at-floor',
      say`its width is given at ${exact('drawing', feature.widthAt, bench.units)} diameter, and the V ends at ${exact('drawing', floor, bench.units)}: it is not as deep as that`,
      'give width-at above the bottom of the V, or leave it out where the width is meant at the surface',
    )
  const tool = ground ?? veeToGrind(bench, feature, angle, cut)
  const shape = { ...cut, near, t, angle, drop, notes: nosed.notes }
  return narrowNose(bench, feature, tool, shape) ?? { ok: true, draft: assemble(bench, feature, tool, step, shape) }
}

/** Nobody plunges a V tool more often beside its last place than this: common practice, no source. */
const MOST_PLUNGES = 30

/** A nose so narrow that the root takes too many plunges beside each other. */
function narrowNose(bench: Bench, feature: VGrooveFeature, tool: VeeTool, shape: Shape): Drafted | null {
  if (feature.method === 'flank-feed') return null
  const { roughPlaces, spacing } = plungeCuts(bench, feature, tool, shape)
  if (roughPlaces.length <= MOST_PLUNGES) return null
  const show = (length: Length) => about('planned', length, bench.units, bench.units === 'inch' ? 4 : 3)
  // As many gaps as fill the root beside one nose.
  const wide = shape.root / ((spacing / tool.nose) * (MOST_PLUNGES - 1) + 1)
  return refuse(
    'nose-too-narrow',
    say`a root of ${show(shape.root)} with a nose of ${show(tool.nose)} takes ${roughPlaces.length} plunges beside each other, more than ${MOST_PLUNGES}`,
    say`grind the nose ${show(roundedUp(wide, bench.units))} wide or wider`,
  )
}

/** Up to what can be measured on a tool. */
const roundedUp = (length: Length, units: Bench['units']): Length => {
  const step = units === 'inch' ? INCH / 10_000 : MM / 1000
  return Math.ceil(length / step) * step
}

function assemble(bench: Bench, feature: VGrooveFeature, tool: VeeTool, step: PlacedStep, shape: Shape) {
  const { near, width, depth, t } = shape
  return {
    feature,
    tool,
    undersize: shape.root - tool.nose,
    surface: step.measured,
    zero: { fromEnd: near, diameter: step.measured },
    wanted: vForm(near, shape, -step.measured / 2),
    region: { from: near, to: near + width },
    dimensions: dimensions(bench, feature, step, shape),
    ...(feature.method === 'flank-feed'
      ? { cuts: flankCuts(bench, feature, tool, shape), angle: flankAngle(feature, shape.angle) }
      : { cuts: plungeCuts(bench, feature, tool, shape) }),
    drawn: drawnSizes(bench, feature),
    layout: edgeLines(bench, feature.place, near, near + width),
    placing: { point: 'nose-tailstock-corner' as const, against: { line: near } },
    touch: { diameter: step.measured, at: null },
    notes: [
      ...shape.notes,
      feature.method === 'flank-feed'
        ? flankNote(90 - flankAngle(feature, shape.angle), shape.angle / 2)
        : say`The near flank reaches its line when the nose is ${about('planned', depth * t, bench.units)} to the headstock side of that line.`,
      ...onMeasured(bench, feature, step, shape),
    ],
  }
}

function flankNote(set: Degrees, half: Degrees): Prose {
  if (half - set < 1 / 60)
    return 'Flank feed: the compound, half the angle from square, slides the tool down the tailstock-side flank; the nose and the headstock-side flank cut.'
  return say`Flank feed: the compound, ${degrees('angle', set)} from square, is ${degrees('angle', half - set)} under half the angle, so that the tool does not rub on the tailstock-side flank going down; the nose and the headstock-side flank cut, and a light straight plunge finishes both flanks.`
}

/** Smaller stock meets the same flanks further down, larger stock further up; the limits move with it. */
function onMeasured(bench: Bench, feature: VGrooveFeature, step: PlacedStep, { drop, t }: Shape): Prose[] {
  if (drop === 0) return []
  const way = drop > 0 ? 'less' : 'more'
  const by = (length: Length) =>
    say`${about('planned', Math.abs(length), bench.units, bench.units === 'inch' ? 4 : 3)} ${way}`
  const width = feature.widthAt === null ? say`, width and its limits ${by(2 * drop * t)}` : ''
  const [drawn, measures] = [step.diameter.nominal, step.measured].map((one) => exact('drawing', one, bench.units))
  return [
    say`Drawn on ${drawn!} diameter, the stock measures ${measures!}: depth and its limits are ${by(drop)}${width}.`,
  ]
}

const drawnSizes = ({ units }: Bench, feature: VGrooveFeature): Prose[] => [
  say`${asDrawn({ ...feature.angle, text: inDegrees(feature.angle.text) }, 'deg')} included`,
  ...(feature.width !== null ? [say`${asDrawn(feature.width, units)} wide`] : []),
  ...(feature.depth !== null ? [say`${asDrawn(feature.depth, units)} deep`] : []),
  ...(feature.bottomDiameter !== null ? [say`bottom diameter ${asDrawn(feature.bottomDiameter, units)}`] : []),
  ...(feature.root !== null ? [say`root ${asDrawn(feature.root, units)}`] : []),
  drawnPlace(units, feature.place),
]

const inDegrees = (text: string): string => (/^[\d.]+$/.test(text) ? `${text}°` : text)

/**
 * The edge is ground no further back than the depth needs: a longer flank would meet a nearby shoulder. The blank is as
 * wide as the ground edge.
 */
function veeToGrind(bench: Bench, feature: VGrooveFeature, angle: Degrees, form: VForm): VeeTool {
  const common = toGrind(bench, feature, form.width, form.depth + pastTheDepth(bench.units))
  return { ...common, blank: null, shape: 'vee', angle, angleWithin: null, nose: Math.floor(form.root) }
}
