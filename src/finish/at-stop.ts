import type { Budgeted } from '../budget/budgeted.ts'
import { type AtStop, readingError } from '../budget/causes.ts'
import { stepTravel } from '../dials/travel.ts'
import { type Instruments, instrumentsOf } from '../lathe/instruments.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Check, Taken } from '../moves/inspection.ts'
import type { Operation, Slide } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { worthReading } from './reads.ts'
import { stopOf } from './stop.ts'
import { summedError } from './table.ts'
import { anyAcross, slideOf } from './width.ts'
import { summedWidth } from './width-table.ts'

/**
 * What the stop of an operation measures and corrects by, with what is at hand; null if there is no such stop. A size that is read no surer than it is cut has no table, and corrects nothing.
 */
export const atStopOf = (
  lathe: Lathe,
  operation: Operation,
  trace: OperationTrace,
  budget: readonly Budgeted[],
  inspection: readonly Check[],
): AtStop | null => {
  const stop = stopOf(operation, trace)
  if (stop === null) return null
  const taken = (id: string): Taken | null => inspection.find((check) => check.id === id)?.by ?? null
  const corrects = (slide: Slide, within: number) => {
    const scale = slide === 'carriage' ? lathe.carriage! : slide === 'compound' ? lathe.compound.scale : lathe.crossFeed
    return { slide, within, step: stepTravel(scale), reading: readingError(lathe, slide) }
  }
  const byDepth = !operation.dimensions.some(({ id, fixed }) => id === 'bottomDiameter' && fixed === true)
  const [bottom, width] = [taken('bottomDiameter'), taken('width')]
  const across = operation.dimensions.some(({ id }) => id === 'angle') ? null : anyAcross(operation, stop.at)
  // Down a flank a step of the compound goes into the work by its sine.
  const into = stop.by === 'compound' ? Math.sin((operation.angle * Math.PI) / 180) : 1
  const deep = bottom === null ? null : corrects(stop.by, asDepth(bottom, byDepth, instrumentsOf(lathe)))
  const found: AtStop = {
    bottom:
      deep !== null && worthReading(bottom, summedError(budget, byDepth))
        ? { ...deep, step: deep.step * into, reading: deep.reading * into, byDepth }
        : null,
    width:
      width !== null && across !== null && worthReading(width, summedWidth(budget))
        ? corrects(slideOf(operation, across), width.within)
        : null,
  }
  return found
}

/** Half of what the diameter is off by; by its depth on the drawing it counts from the outside, which is measured too. */
const asDepth = (bottom: Taken, byDepth: boolean, { micrometer, caliper }: Instruments): number => {
  const outside = byDepth && DIAMETERS.has(bottom.with) ? (micrometer ?? caliper ?? 0) : 0
  return (bottom.within + outside) / 2
}

/** The others are set on the turned surface, and show the depth from it. */
const DIAMETERS: ReadonlySet<Taken['with']> = new Set(['micrometer', 'blade-micrometer', 'pins'])

/** What is corrected at the stop, and each size as it comes out cut without measuring, and measured. */
export type Promised = {
  readonly budget: readonly Budgeted[]
  /** Absent where there is no stop that could correct anything. */
  readonly corrects?: { readonly bottom: boolean; readonly width: boolean }
}

/**
 * Measured and corrected by all that is at hand; a correction by which a size would no longer surely hold, that holds as
 * it is cut, is left out. `budgetWith`: the sizes, measured so.
 */
export const promised = (
  cut: readonly Budgeted[],
  atStop: AtStop | null,
  budgetWith: (atStop: AtStop) => readonly Budgeted[],
): Promised => {
  if (atStop === null) return { budget: cut }
  const { bottom, width } = atStop
  const ways: readonly AtStop[] = [atStop, { bottom, width: null }, { bottom: null, width }]
  for (const way of ways) {
    if (way.bottom === null && way.width === null) continue
    const budget = withMeasured(cut, budgetWith(way))
    const harmed = budget.some(({ verdict }, i) => verdict === 'may not hold' && cut[i]!.verdict === 'holds')
    if (!harmed) return { budget, corrects: { bottom: way.bottom !== null, width: way.width !== null } }
  }
  return { budget: cut, corrects: { bottom: false, width: false } }
}

/** Where the sheet says to finish by what is measured, the verdict is that of the size so measured. */
const withMeasured = (cut: readonly Budgeted[], measured: readonly Budgeted[]): readonly Budgeted[] =>
  cut.map((one) => {
    const other = measured.find(({ id }) => id === one.id)
    if (other === undefined || alike(one, other)) return one
    const { low, high, rss, worstCause, verdict, spare } = other
    const better = high - low < one.high - one.low - SAME
    return { ...one, verdict, spare, measured: { low, high, rss, worstCause, better } }
  })

/** A size that no correction changes. */
const alike = (one: Budgeted, other: Budgeted): boolean =>
  [one.low - other.low, one.high - other.high, one.rss - other.rss].every((off) => Math.abs(off) < SAME)

/** A nanometer, in pm. */
const SAME = 1000
