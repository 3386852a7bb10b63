import { replayOnce } from './replay-once.ts'
import type { SlideName } from './screws.ts'
import { dialOf, slides, travelPerUnit } from './screws.ts'
import type { Sheet, SheetFeature, SheetStep } from './sheet-shape.ts'
import { changedFeature, widthOf } from './tables.ts'

/** What the machinist cannot help, in the units of the sheet and in degrees; of reading null = half of what can be read. */
export type Errors = {
  reading: number | null
  touchOff: number
  tool: number
  runout: number
  swivel: number
  trued: number
}

type Sizes = { depth: number; width: number }
type Ends = { low: Sizes; high: Sizes }

/**
 * The worst case of depth and width, worked out once more: each error is made alone, both ways, the sheet is replayed with
 * it on the grid, and what it takes or adds is summed.
 */
export function budgetProblems(sheet: Sheet, errors: Errors): { sizes: number; problems: string[] } {
  let sizes = 0
  const problems = sheet.features.flatMap((feature, index) => {
    if (!isWorkedOut(sheet, index)) return []
    const { low, high } = endsOf(sheet, index, errors)
    return (['depth', 'width'] as const).flatMap((name) => {
      const told = feature.finished?.[name]
      if (told?.low === undefined || told.high === undefined || (name === 'width' && !hasLevelWidth(feature))) return []
      sizes++
      const off = Math.max(Math.abs(low[name] - told.low), Math.abs(high[name] - told.high))
      return off <= (sheet.units === 'inch' ? 1e-5 : 2.5e-4)
        ? []
        : [
            `${feature.name}: ${name} from ${told.low} to ${told.high}, the grid finds ${low[name].toFixed(7)} to ${high[name].toFixed(7)}`,
          ]
    })
  })
  return { sizes, problems }
}

/** Where the compound is swung the walls come from places of several depths: which of them is the width is not decided here. */
const hasLevelWidth = ({ edge, compoundAngle }: SheetFeature): boolean =>
  edge!.shape === 'square' && (compoundAngle ?? 0) === 0

/** Plunged or fed across with level edges whose floor no node can miss, and by readings alone. */
function isWorkedOut(sheet: Sheet, index: number): boolean {
  const { status, edge, touch } = sheet.features[index]!
  if (status !== 'planned' || !edge || edge.face || touch?.at) return false
  if (sheet.steps.some((step) => step.feature === index && step.placeFromEnd !== undefined)) return false
  const floor = edge.shape === 'square' ? edge.width! - 2 * (edge.radius ?? 0) : edge.shape === 'vee' ? edge.nose! : 0
  return floor > (sheet.units === 'inch' ? 0.003 : 0.06)
}

function endsOf(sheet: Sheet, index: number, errors: Errors): Ends {
  const edge = sheet.features[index]!.edge!
  const angle = sheet.features[index]!.compoundAngle ?? 0
  const swung = angle === 0 || angle === 90 ? errors.trued : errors.swivel
  const plain = sizesOf(sheet, index)
  const causes: ((by: 1 | -1) => Sheet)[] = [
    (by) => changedFeature(sheet, index, { off: by * errors.touchOff }),
    (by) => changedFeature(sheet, index, { off: by * errors.runout }),
    (by) => changedFeature(sheet, index, { compoundAngle: angle + by * swung }),
    ...(edge.shape === 'square'
      ? [(by: 1 | -1) => changedFeature(sheet, index, {}, { width: edge.width! + by * errors.tool })]
      : []),
  ]
  const all = causes.map((cause) => spread(plain, [cause(1), cause(-1)], index))
  return summed(plain, [...all, ...slides.map((slide) => misread(sheet, index, slide, errors, plain))])
}

/** How far below and above what is planned two replays come out. */
function spread(plain: Sizes, sheets: Sheet[], index: number): Ends {
  const found = sheets.map((sheet) => sizesOf(sheet, index))
  const least = (name: keyof Sizes): number => Math.min(0, ...found.map((one) => one[name] - plain[name]))
  const most = (name: keyof Sizes): number => Math.max(0, ...found.map((one) => one[name] - plain[name]))
  return { low: { depth: least('depth'), width: least('width') }, high: { depth: most('depth'), width: most('width') } }
}

function summed(plain: Sizes, parts: Ends[]): Ends {
  const sum = (end: 'low' | 'high', name: keyof Sizes): number =>
    parts.reduce((total, part) => total + part[end][name], plain[name])
  const sizes = (end: 'low' | 'high'): Sizes => ({ depth: sum(end, 'depth'), width: sum(end, 'width') })
  return { low: sizes('low'), high: sizes('high') }
}

/** Each reading of a slide wrong by itself, and all of them the same way: whichever is worse counts. */
function misread(sheet: Sheet, index: number, slide: SlideName, errors: Errors, plain: Sizes): Ends {
  const dial = dialOf(sheet, slide)
  const mine = (step: SheetStep): boolean =>
    step.feature === index && step.slide === slide && step.action !== 'zero' && typeof step.reading === 'number'
  const readings = [...new Set(sheet.steps.filter(mine).map(({ reading }) => reading!))]
  if (dial === null || readings.length === 0) return spread(plain, [], index)
  // An error of reading is one on the dial: where that shows diameters, the slide is off by half of it.
  const unit = travelPerUnit(sheet, { ...dial, reads: 'depth' })
  const readable = (dial.graduation * (dial.readTo ?? 1)) / 2
  const stated = errors.reading === null ? readable : errors.reading / unit
  const by = slide === 'carriage' ? Math.max(stated, readable) : stated
  const wrong = (wanted: (reading: number) => boolean): Ends =>
    spread(
      plain,
      [by, -by].map((off) => ({
        ...sheet,
        steps: sheet.steps.map((step) =>
          mine(step) && wanted(step.reading!) ? { ...step, reading: step.reading! + off } : step,
        ),
      })),
      index,
    )
  const zero = { depth: 0, width: 0 }
  const alone = summed(
    zero,
    readings.map((reading) => wrong((one) => one === reading)),
  )
  const together = wrong(() => true)
  const worse = (pick: (a: number, b: number) => number, end: 'low' | 'high'): Sizes => ({
    depth: pick(alone[end].depth, together[end].depth),
    width: pick(alone[end].width, together[end].width),
  })
  return { low: worse(Math.min, 'low'), high: worse(Math.max, 'high') }
}

function sizesOf(sheet: Sheet, index: number): Sizes {
  const ran = replayOnce(sheet, { crossFeed: 0, compound: 0, carriage: 0 })
  const last = sheet.steps.findLast(({ feature, action }) => feature === index && action === 'measure')!
  const sizes = ran.measured.get(last.number)
  // An error larger than the form leaves nothing to measure.
  if (sizes === undefined) return { depth: 0, width: 0 }
  const { bottom, fed } = sizes
  const feature = sheet.features[index]!
  return { depth: (feature.surface! - bottom) / 2, width: widthOf(feature, fed) }
}
