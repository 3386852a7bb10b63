import type { Ran, RanFeature } from './replay-once.ts'
import { replayOnce } from './replay-once.ts'
import { sayingProblems } from './sayings.ts'
import { lostMotion, readingProblem, slides } from './screws.ts'
import type { Sheet, SheetStep } from './sheet-shape.ts'
import { widthAt } from './sheet-shape.ts'
import { widthBelow } from './work-grid.ts'

export type BruteFeature = {
  index: number
  name: string
  touched: boolean
  /** Grid of the profiles: node i stands at `offset + i * step` from the free end. */
  step: number
  offset: number
  runs: BruteRun[]
  problems: string[]
}

export type BruteRun = {
  lost: { crossFeed: number; compound: number; carriage: number }
  profile: Float64Array
  raw: Float64Array
  differs: boolean
  first: number
  last: number
  width: number
  depth: number
  bottomDiameter: number
  near: number
}

/** Replays a sheet on a grid for many amounts of lost motion in every screw, and tells what came of it. */
export function bruteForce(sheet: Sheet): { features: BruteFeature[]; problems: string[] } {
  const general = sheet.steps.flatMap((step) => {
    const problem = readingProblem(sheet, step)
    return problem === null ? [] : [`step ${step.number}: ${problem}`]
  })
  const runs: Ran[] = []
  for (const lost of lostMotions(sheet)) runs.push(replayOnce(sheet, lost, runs[0]?.grid))
  const features = sheet.features.flatMap((feature, index) =>
    feature.status === 'planned' ? [summary(sheet, index, runs)] : [],
  )
  const said = sayingProblems(sheet, runs[0]!, runs.at(-1)!)
  const travel = features.flatMap(({ index }) => travelProblem(sheet, index))
  return { features, problems: [...general, ...said, ...travel, ...features.flatMap((feature) => feature.problems)] }
}

type Lost = BruteRun['lost']

function lostMotions(sheet: Sheet): Lost[] {
  const [cross, compound, carriage] = slides.map((slide) => {
    const most = sheet.steps.some((step) => step.slide === slide) ? lostMotion(sheet, slide) : 0
    return most > 0 ? [0, most / 3, most / 2, most] : [0]
  })
  return cross!.flatMap((c) =>
    compound!.flatMap((o) => carriage!.map((k) => ({ crossFeed: c, compound: o, carriage: k }))),
  )
}

function summary(sheet: Sheet, index: number, runs: Ran[]): BruteFeature {
  const grid = runs[0]!.grid
  const first = Math.min(...runs.map((run) => run.features[index]!.first))
  const last = Math.max(...runs.map((run) => run.features[index]!.last))
  const name = sheet.features[index]!.name
  const measured = runs.map((run) =>
    measure(run, run.features[index]!, runs[0]!, [first, last], widthAt(sheet.features[index]!)),
  )
  const problems = new Set(runs.flatMap((run) => run.features[index]!.problems))
  if (measured.some((run) => run.differs)) problems.add('the form depends on how much motion is lost')
  if (last < 0) problems.add('nothing was cut')
  return {
    index,
    name,
    touched: last >= 0,
    step: grid.step,
    offset: grid.offset,
    runs: measured,
    problems: [...problems].map((problem) => `${name}: ${problem}`),
  }
}

function measure(
  run: Ran,
  feature: RanFeature,
  reference: Ran,
  [first, last]: [number, number],
  at: number | null,
): BruteRun {
  const { grid } = run
  let [smallest, deepest, differs] = [Number.POSITIVE_INFINITY, 0, false]
  for (let i = Math.max(0, first); i <= last; i++) {
    if (grid.now[i]! < smallest) smallest = grid.now[i]!
    if (grid.raw[i]! - grid.now[i]! > deepest) deepest = grid.raw[i]! - grid.now[i]!
    if (Math.abs(grid.now[i]! - reference.grid.now[i]!) > 1e-7) differs = true
  }
  return {
    lost: run.lost,
    profile: grid.now,
    raw: grid.raw,
    differs,
    first: feature.first,
    last: feature.last,
    width: widthBelow(grid, feature.first, feature.last, at),
    depth: deepest,
    bottomDiameter: smallest * 2,
    near: grid.offset + (feature.first - 0.5) * grid.step,
  }
}

function travelProblem(sheet: Sheet, index: number): string[] {
  const { compound, carriage } = sheet.lathe
  return [
    ...runsThrough(sheet, index, 'compound', compound.travel ?? null, compound.units),
    ...(carriage === null
      ? []
      : runsThrough(sheet, index, 'carriage', inSheet(sheet, carriage.units, carriage.range), carriage.units)),
  ]
}

/** A range is told in the units of its own indicator, the travel of the compound in those of the sheet. */
function inSheet(sheet: Sheet, units: 'inch' | 'mm', range: number | undefined): number | null {
  return range === undefined ? null : range * (units === sheet.units ? 1 : units === 'mm' ? 1 / 25.4 : 25.4)
}

function runsThrough(
  sheet: Sheet,
  index: number,
  slide: 'compound' | 'carriage',
  travel: number | null,
  units: 'inch' | 'mm',
): string[] {
  if (travel === null) return []
  const readings = sheet.steps
    .filter((step: SheetStep) => step.feature === index && step.slide === slide && typeof step.reading === 'number')
    .map((step) => step.reading! * (units === sheet.units ? 1 : units === 'mm' ? 1 / 25.4 : 25.4))
  const used = Math.max(0, ...readings) - Math.min(0, ...readings)
  return used > travel + 1e-6 ? [`${sheet.features[index]!.name}: the ${slide} runs through ${used} of ${travel}`] : []
}
