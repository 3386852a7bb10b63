import type { EdgeCurve } from './edges.ts'
import { edgeCurve } from './edges.ts'
import type { Ran } from './replay-once.ts'
import { replayOnce } from './replay-once.ts'
import { lostMotion } from './screws.ts'
import type { Edge, Finish, MetalLeft, Sheet, SheetFeature, SheetStep } from './sheet-shape.ts'
import { widthAt } from './sheet-shape.ts'
import type { Place } from './work-grid.ts'

/**
 * What the tables of a sheet promise: the zero, or the width of the tool, that a measurement implies is replayed with the
 * readings of its row, and the size told there comes out. `take` says which rows: all, or one by turns.
 */
export function tableProblems(sheet: Sheet, take: (rows: number) => number[]): { rows: number; problems: string[] } {
  const found = sheet.steps.flatMap((step) => {
    const { corrections, widthCorrections, metalLeft } = step
    const expected = corrections || widthCorrections ? sizesAt(sheet, step.number) : null
    return [
      ...take(corrections?.rows.length ?? 0).map((row) => depthRow(sheet, step, row, expected!)),
      ...take(widthCorrections?.rows.length ?? 0).map((row) => widthRow(sheet, step, row, expected!, take)),
      ...(metalLeft?.sizes ?? []).map((size) => once(sheet, step, metalLeft!, size)),
    ]
  })
  return { rows: found.length, problems: found.flat() }
}

type Sizes = { bottom: number; fed: readonly Place[] }

function sizesAt(sheet: Sheet, number: number): Sizes {
  return replayOnce(sheet, none).measured.get(number)!
}

const none = { crossFeed: 0, compound: 0, carriage: 0 }

/** Without and with all of the lost motion that the lathe may have. */
function replays(sheet: Sheet): Ran[] {
  const [crossFeed, compound, carriage] = [
    lostMotion(sheet, 'cross-feed'),
    lostMotion(sheet, 'compound'),
    lostMotion(sheet, 'carriage'),
  ]
  return [none, { crossFeed, compound, carriage }].map((lost) => replayOnce(sheet, lost))
}

/** Off on the diameter by so much at the stop, the touch of the cross-feed was off by half of that. */
function deeper(measure: string, measured: number, { bottom }: Sizes, surface: number): number {
  return measure === 'bottomDiameter' ? (bottom - measured) / 2 : (measured - (surface - bottom)) / 2
}

function depthRow(sheet: Sheet, step: SheetStep, at: number, sizes: Sizes): string[] {
  const { measure, rows } = step.corrections!
  const row = rows[at]!
  const off = deeper(measure, row.measured, sizes, sheet.features[step.feature]!.surface!)
  const spoiled = withFinishes(changedFeature(sheet, step.feature, { off }), row.finishes)
  return replays(spoiled).flatMap((ran) => {
    const { bottom } = lastSizes(spoiled, ran, step.feature)
    return same(sheet, bottom, row.bottomDiameter, depthSlack(sheet, step.feature))
      ? []
      : [
          `step ${step.number}: measured ${row.measured}, the bottom is promised at ${row.bottomDiameter} and is ${bottom.toFixed(6)}`,
        ]
  })
}

/** The tool is so much wider or narrower as the width is; at another depth too, by a row of the other table. */
function widthRow(sheet: Sheet, step: SheetStep, at: number, sizes: Sizes, take: (n: number) => number[]): string[] {
  const row = step.widthCorrections!.rows[at]!
  const one = sheet.features[step.feature]!
  const width = one.edge!.width! + row.measured - widthOf(one, sizes.fed)
  const other = step.corrections?.rows[take(step.corrections.rows.length)[0] ?? 0]
  const off =
    other === undefined
      ? 0
      : deeper(step.corrections!.measure, other.measured, sizes, sheet.features[step.feature]!.surface!)
  const narrower = changedFeature(sheet, step.feature, { off }, { width })
  const spoiled = withFinishes(withFinishes(narrower, row.finishes), other?.finishes ?? [])
  return replays(spoiled).flatMap((ran) => {
    const wide = widthOf(spoiled.features[step.feature]!, lastSizes(spoiled, ran, step.feature).fed)
    return same(sheet, wide, row.width)
      ? []
      : [
          `step ${step.number}: measured ${row.measured}, the width is promised at ${row.width} and is ${wide.toFixed(6)}`,
        ]
  })
}

/** The finishing pass once more, one reading further: a size just on the wrong side of its limit moves by what is told. */
function once(sheet: Sheet, step: SheetStep, { again }: MetalLeft, size: MetalLeft['sizes'][number]): string[] {
  const { feature } = step
  const wanted = size.limit + (size.when === 'under' ? -0.4 : 0.4) * size.perReading
  const spoiled = comingOutAt(sheet, step, size.measure, wanted)
  const at = spoiled.steps.findIndex(({ number }) => number === step.number)
  const repeated = spoiled.steps
    .filter(({ number }) => number >= again[0] && number <= again[1])
    .map((one) => (size.steps.includes(one.number) ? { ...one, reading: one.reading! + size.reading } : one))
  const steps = [...spoiled.steps.slice(0, at + 1), ...repeated, { ...step, number: step.number + 1e6 }]
  // The flanks of a V on a sloping face are a little curved: a mark is worth not quite the same everywhere.
  const curved = sheet.features[feature]!.edge!.face ? 0.01 * size.perReading : 0
  const slack = size.measure === 'width' ? curved : depthSlack(sheet, feature)
  return replays({ ...spoiled, steps }).flatMap((ran) => {
    const before = sizeOf(spoiled.features[feature]!, size.measure, ran.measured.get(step.number)!)
    const after = sizeOf(spoiled.features[feature]!, size.measure, ran.measured.get(step.number + 1e6)!)
    const moved = (after - before) * (size.when === 'under' ? 1 : -1)
    const good = same(sheet, before, wanted, slack) && same(sheet, moved, size.perReading, slack)
    return good
      ? []
      : [
          `step ${step.number}: once more, the ${size.measure} goes from ${before} to ${after}, told is ${size.perReading}`,
        ]
  })
}

/** The same sheet with a touch, or for the width of a groove a tool, that is so much off as makes a size come out so. */
function comingOutAt(sheet: Sheet, { number, feature }: SheetStep, measure: string, wanted: number): Sheet {
  const one = sheet.features[feature]!
  const now = sizesAt(sheet, number)
  const edge = one.edge!
  if (measure !== 'width') return changedFeature(sheet, feature, { off: deeper(measure, wanted, now, one.surface!) })
  const wider = wanted - sizeOf(one, measure, now)
  if (edge.shape === 'vee') return deeperUntil(sheet, { number, feature }, wanted, wider / (2 * flank(edge)))
  return changedFeature(sheet, feature, {}, { width: edge.width! + wider })
}

/** On a sloping face the flanks are not quite straight: one more step of the rule of proportion. */
function deeperUntil(sheet: Sheet, step: Pick<SheetStep, 'number' | 'feature'>, wanted: number, off: number): Sheet {
  const tried = changedFeature(sheet, step.feature, { off })
  const one = tried.features[step.feature]!
  const left = wanted - widthOf(one, sizesAt(tried, step.number).fed)
  return changedFeature(sheet, step.feature, { off: off + left / (2 * flank(one.edge!)) })
}

function sizeOf(feature: SheetFeature, measure: string, { bottom, fed }: Sizes): number {
  if (measure === 'bottomDiameter') return bottom
  return measure === 'width' ? widthOf(feature, fed) : feature.surface! - bottom
}

/** From wall to wall, or from flank to flank on the diameter where it is given, over all places where the tool was in the metal. */
export function widthOf(feature: SheetFeature, fed: readonly Place[]): number {
  const edge = feature.edge!
  const at = (widthAt(feature) ?? feature.surface!) / 2
  const ground = edgeCurve(edge)
  let [near, far] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const { z, tip } of fed) {
    if (tip >= at) continue
    const beside = edge.shape === 'vee' ? besideAt(ground, at - tip) : 0
    const [from, to] = edge.shape === 'vee' ? [-beside, edge.nose! + beside] : [ground.from, ground.to]
    near = Math.min(near, z + from)
    far = Math.max(far, z + to)
  }
  return far - near
}

/** How far a flank stands beside the nose, so much above it: by halving. */
function besideAt(edge: EdgeCurve, height: number): number {
  let [inside, outside] = [0, -edge.from]
  for (let i = 0; i < 60; i++) {
    const middle = (inside + outside) / 2
    if (-edge.depth(-middle) < height) inside = middle
    else outside = middle
  }
  return inside
}

const flank = ({ angle }: Edge): number => Math.tan((angle! * Math.PI) / 360)

function lastSizes(sheet: Sheet, ran: Ran, feature: number): Sizes {
  const last = sheet.steps.findLast((step) => step.feature === feature && step.action === 'measure')!
  return ran.measured.get(last.number)!
}

/** The tip of a round end, and a sharp point, fall between two nodes. */
function depthSlack(sheet: Sheet, feature: number): number {
  const edge = sheet.features[feature]!.edge!
  const step = sheet.units === 'inch' ? 0.0005 : 0.01
  if (edge.shape === 'round') return (2 * step ** 2) / (8 * edge.radius!)
  return edge.shape === 'vee' && edge.nose! < 2 * step ? (2 * step) / Math.tan((edge.angle! * Math.PI) / 360) : 0
}

/** Printed numbers are rounded, and what is replayed from them adds up. */
const same = ({ units }: Sheet, found: number, told: number, slack = 0): boolean =>
  Math.abs(found - told) <= (units === 'inch' ? 2e-6 : 5e-5) + slack

export function changedFeature(sheet: Sheet, at: number, change: object, edge: Partial<Edge> = {}): Sheet {
  const features = sheet.features.map((feature, index) =>
    index === at ? { ...feature, ...change, zero: null, edge: { ...feature.edge!, ...edge } } : feature,
  )
  return { ...sheet, features }
}

function withFinishes(sheet: Sheet, finishes: readonly Finish[]): Sheet {
  const steps = sheet.steps.map((step) => {
    const finish = finishes.find((one) => one.step === step.number)
    return finish === undefined ? step : { ...step, ...finish }
  })
  return { ...sheet, steps }
}
