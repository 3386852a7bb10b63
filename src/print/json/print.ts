import type { Dial, Scale } from '../../lathe/lathe.ts'
import type { StatedEdge } from '../../moves/stated.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { words } from '../../phrase/words.ts'
import {
  type InspectionLine,
  type ProofLine,
  type Sheet,
  type SheetFeature,
  type SheetGain,
  type SheetStep,
  type SlipCard,
  saysOf,
} from '../../sheet/sheet.ts'
import type { Length, Units } from '../../units/length.ts'
import { inUnits } from '../../units/length.ts'
import { DIAL_ACTIONS } from './actions.ts'
import { changedData } from './changed.ts'
import { grindOf } from './grind.ts'
import { setUpData } from './set-up.ts'

export const FORMAT = 'groovewright.sheet/1'

/** The sheet as data: enough to replay it without the job. Key order is fixed, so equal sheets are equal bytes. */
export const printJson = (sheet: Sheet): string => `${JSON.stringify(toData(sheet), null, 2)}\n`

export const toData = (sheet: Sheet) => ({
  format: FORMAT,
  title: sheet.title,
  drawingNumber: sheet.drawingNumber,
  identity: sheet.identity,
  ...(sheet.continues === undefined ? {} : { continues: sheet.continues }),
  units: sheet.units,
  part: part(sheet),
  lathe: lathe(sheet),
  cautions: sheet.cautions,
  decision: sheet.decision,
  orderReasons: sheet.orderReasons,
  features: sheet.features.map((feature, index) => ({
    ...featureData(sheet, feature),
    ...(sheet.grind === undefined ? {} : grindOf(sheet.grind, index)),
  })),
  steps: sheet.steps.map((step) => stepData(step, sheet.units)),
  warnings: sheet.warnings.map(({ feature, code, say }) => ({ feature, code, say: words(say, sheet.units) })),
  ...(sheet.slips === undefined ? {} : { slips: sheet.slips.map((card) => slipData(card, sheet.units)) }),
  ...(sheet.supervised === undefined
    ? {}
    : {
        supervised: sheet.supervised.map(({ feature, before, kind, says }) => ({
          feature,
          before,
          kind,
          say: words(says, sheet.units),
        })),
      }),
  ...(sheet.changed === undefined ? {} : { changed: changedData(sheet.changed, sheet.units) }),
})

const slipData = ({ feature, lines, signs }: SlipCard, units: Units) => ({
  feature,
  lines: lines.map(({ shows, mistake }) => ({ shows: words(shows, units), mistake })),
  signs: signs.map((sign) => words(sign, units)),
})

const part = ({ part: { material, held, overhang, steps }, units }: Sheet) => ({
  material,
  held,
  overhang: plain(overhang, units),
  steps: steps.map((step) => ({
    name: step.name,
    diameter: plain(step.diameter, units),
    measuredDiameter: plain(step.measured, units),
    from: plain(step.from, units),
    to: plain(step.to, units),
  })),
})

const lathe = ({ lathe: { name, crossFeed, compound, carriage, spindleSpeeds }, units }: Sheet) => ({
  name,
  crossFeed: scale(crossFeed),
  compound: {
    ...scale(compound.scale),
    travel: compound.travel === null ? null : plain(compound.travel, units),
    scaleZero: compound.scaleZero,
  },
  carriage: carriage === null ? null : scale(carriage),
  spindleSpeeds,
})

/** A readout is a scale whose graduation is its resolution, without turns and without lost motion. */
const scale = (of: Scale) => ({
  units: of.units,
  graduation: plain(of.kind === 'dial' ? of.graduation : of.resolution, of.units),
  perTurn: of.kind === 'dial' ? plain(of.perTurn, of.units) : null,
  reads: of.reads,
  backlash: of.kind === 'dial' ? plain(of.backlash, of.units) : 0,
  readTo: of.kind === 'dial' ? (of satisfies Dial).readTo : 1,
  readout: of.kind === 'readout',
  ...(of.kind === 'readout' && of.range !== undefined ? { indicator: true, range: plain(of.range, of.units) } : {}),
})

const edgeData = (edge: StatedEdge, units: Units) => ({
  shape: edge.shape,
  width: orNull(edge.width, units),
  nose: orNull(edge.nose, units),
  angle: edge.angle,
  radius: orNull(edge.radius, units),
  reach: plain(edge.reach, units),
  blank: orNull(edge.blank, units),
  edgeOffset: orNull(edge.edgeOffset, units),
  rakeInUse: edge.rakeInUse,
  ...(edge.face === undefined ? {} : { face: faceData(edge.face, units) }),
  measured: edge.measured,
})

const featureData = (sheet: Sheet, feature: SheetFeature) => {
  const { name, kind, status } = feature
  if (feature.status === 'refused') {
    const { code, reason, remedy, named } = feature
    const tool =
      named === undefined ? {} : { tool: named.tool, edge: { ...edgeData(named.edge, sheet.units), undersize: null } }
    return {
      name,
      kind,
      ...tool,
      status,
      refusal: { code, reason: words(reason, sheet.units), remedy: words(remedy, sheet.units) },
    }
  }
  const { units } = sheet
  const { spindle } = feature
  return {
    name,
    kind,
    tool: feature.tool,
    status,
    why: feature.why,
    drawn: saysOf(feature.heading, 'drawn').map((phrase) => words(phrase, units)),
    edge: { ...edgeData(feature.edge, units), undersize: orNull(feature.undersize, units) },
    compoundAngle: feature.compoundAngle,
    surface: plain(feature.surface, units),
    spindle: {
      rpm: spindle.rpm,
      wanted: Number(spindle.wanted.toFixed(3)),
      cuttingSpeed: spindle.cuttingSpeed,
      speedUnits: spindle.speedUnits,
      factor: spindle.factor,
      source: spindle.source,
      tooFast: spindle.tooFast,
    },
    ...setUpData(feature, units),
    notes: feature.notes.map((phrase) => words(phrase, units)),
    proof: words(feature.proof.replayed, units),
    finished: Object.fromEntries(feature.proof.lines.map((line) => [line.id, finished(line, units)])),
    inspection: feature.inspection.map((line) => inspected(line, units)),
    ...(feature.gains === undefined ? {} : { gains: feature.gains.map((gain) => gainData(gain, units)) }),
  }
}

const faceData = ({ angle, radius, leg, floor }: NonNullable<StatedEdge['face']>, units: Units) => ({
  angle,
  radius: orNull(radius, units),
  ...(leg === undefined ? {} : { leg: plain(leg, units) }),
  floor: plain(floor, units),
})

const finished = (line: ProofLine, units: Units) => ({
  planned: line.planned.value,
  low: line.low.value,
  high: line.high.value,
  rss: line.rss.value,
  limits: line.limits === null ? null : [line.limits[0].value, line.limits[1].value],
  ...(line.measured === null
    ? {}
    : {
        measured: {
          low: line.measured.low.value,
          high: line.measured.high.value,
          rss: line.measured.rss.value,
          largestCause: line.measured.worstCause ?? 'none',
          better: line.measured.better,
        },
      }),
  verdict: line.verdict,
  spare: line.spare === null ? null : line.verdict === 'may not hold' ? -line.spare.value : line.spare.value,
  largestCause: line.worstCause ?? 'none',
  remedy: line.remedy === null ? null : words(line.remedy, units),
})

const gainData = ({ change, set, holds, says, sizes }: SheetGain, units: Units) => ({
  change,
  set: set.map((one) => words(one, units)),
  say: words(says, units),
  holds,
  finished: Object.fromEntries(
    sizes.map(({ id, planned, low, high, rss, spare, verdict }) => [
      id,
      {
        planned: planned.value,
        low: low.value,
        high: high.value,
        rss: rss.value,
        verdict,
        spare: spare === null ? null : spare.value,
      },
    ]),
  ),
})

/** The blanks of the table are printed as nulls, so that a filled table has the same shape. */
const inspected = (line: InspectionLine, units: Units) => ({
  id: line.id,
  label: line.label,
  using: words(line.using, units),
  instrument: line.by === null ? null : line.by.with,
  within: line.by === null ? null : line.by.within.value,
  planned: line.planned.value,
  limits: line.limits === null ? null : [line.limits[0].value, line.limits[1].value],
  decision:
    line.decision === null
      ? null
      : {
          accept: line.decision.accept === null ? null : line.decision.accept.map(({ value }) => value),
          rejectUnder: line.decision.rejectUnder.value,
          rejectOver: line.decision.rejectOver.value,
        },
  pin: line.pin === null ? null : line.pin.value,
  pair: line.pair === null ? null : { go: line.pair[0].value, noGo: line.pair[1].value },
  measured: null,
  verdict: null,
})

const stepData = (step: SheetStep, units: Units) => ({
  number: step.number,
  feature: step.feature,
  action: step.action,
  ...(step.slide === null || !ON_A_DIAL.has(step.action)
    ? {}
    : { slide: step.slide, reading: step.reading, turns: step.turns, mark: step.mark }),
  ...(step.action === 'touch-off' && step.slide !== null ? { slide: step.slide } : {}),
  ...(step.atLeast === undefined ? {} : { atLeast: step.atLeast }),
  ...(step.place === undefined ? {} : { placeFromEnd: plain(step.place, units) }),
  ...(step.purpose === null ? {} : { purpose: step.purpose }),
  group: step.group,
  thing: step.thing,
  does: words(step.does, units),
  ...(step.slide === null || !MOVES_A_SLIDE.has(step.action)
    ? { lines: ownLines(step).map((phrase) => words(phrase, units)) }
    : {}),
  say: sayOf(step, units),
  ...(step.corrections === undefined ? {} : { corrections: correctionsData(step.corrections) }),
  ...(step.widthCorrections === undefined ? {} : { widthCorrections: widthData(step.widthCorrections) }),
  ...(step.metalLeft === undefined ? {} : { metalLeft: metalLeftData(step.metalLeft) }),
})

const metalLeftData = ({ from, to, sizes }: NonNullable<SheetStep['metalLeft']>) => ({
  again: [from, to],
  sizes: sizes.map(({ measure, when, limit, past, steps, reading, perStep }) => ({
    measure,
    when,
    limit: limit.value,
    pastSaving: past === null ? null : past.value,
    steps,
    reading,
    perReading: perStep.value,
  })),
})

const correctionsData = ({ byDepth, expected, most, between, rows }: NonNullable<SheetStep['corrections']>) => ({
  measure: byDepth ? 'outsideLessBottom' : 'bottomDiameter',
  expected: expected.value,
  most: most.value,
  between,
  rows: rows.map(({ measured, bottom, within, finishes }) => ({
    measured: measured.value,
    finishes,
    bottomDiameter: bottom.value,
    within,
  })),
})

const widthData = ({ expected, most, between, rows }: NonNullable<SheetStep['widthCorrections']>) => ({
  measure: 'width',
  expected: expected.value,
  most: most.value,
  between,
  rows: rows.map(({ measured, width, within, finishes }) => ({
    measured: measured.value,
    finishes,
    width: width.value,
    within,
  })),
})

const ON_A_DIAL: ReadonlySet<string> = new Set(DIAL_ACTIONS)
const MOVES_A_SLIDE: ReadonlySet<string> = new Set([...DIAL_ACTIONS, 'touch-off'])

/** What a step by hand says besides, without the tables under it: these are data of their own. */
const ownLines = ({ effect, more, ownLines }: SheetStep): readonly Phrase[] => [
  ...(effect.length > 0 ? [effect] : []),
  ...more.slice(0, ownLines),
]

/** The whole line as one sentence, as in the text sheet. */
const sayOf = (step: SheetStep, units: Units): string =>
  [
    `${step.thing} ${words([...(step.first ?? []), ...step.does], units)}`,
    ...(step.effect.length > 0 ? [words(step.effect, units)] : []),
    ...step.more.map((phrase) => words(phrase, units)),
  ].join('; ')

/** Nine decimals: finer than a picometer in millimeters, and no binary rounding error. */
const plain = (length: Length, units: Units): number => Number(inUnits(length, units).toFixed(9))
const orNull = (length: Length | null, units: Units): number | null => (length === null ? null : plain(length, units))
