import type { Budgeted } from '../budget/budgeted.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import { type Between, betweenRows } from './between.ts'
import { type Corrected, correctedFor, finishedAt, finishStep, type Shop } from './measured.ts'
import { stretches, whyNot } from './no-row.ts'
import { worthReading } from './reads.ts'
import type { Stop } from './stop.ts'
import { type Trouble, troubleIn } from './trouble.ts'

/** One size of the bottom, and the reading to finish at for it. */
export type Row = {
  /** What the bottom diameter measures at the stop, pm. */
  readonly measured: Length
  /** Reading of the finishing slide for each of the stop's finishes, in readable steps. */
  readonly counts: readonly number[]
  readonly deeper: number
  readonly bottom: Length
  readonly within: boolean | null
}

export type CorrectionTable = {
  readonly at: number
  readonly finishes: readonly number[]
  readonly by: Stop['by']
  /** As a micrometer reads it. */
  readonly expected: Length
  /** The drawing gives a depth: rows are keyed by outside diameter minus bottom diameter, both as measured. */
  readonly byDepth: boolean
  /** A larger difference from the expected size is not explained by any stated error, pm of diameter. */
  readonly most: Length
  /** From the largest bottom to the smallest. Only rows whose replay passes; empty if no reading can be given this way. */
  readonly rows: readonly Row[]
  /** Sizes in between that have no row; neighbors are grouped. */
  readonly without: readonly (readonly Length[])[]
  /** Why the first of them has none. */
  readonly reason: string | null
  readonly between: Between
  /** The smallest step that is read, pm. */
  readonly quantum: Length
}

/** Five to nine sizes around the expected one, each planned and replayed from the form that has this size. Null if no error is stated. */
export const correctionTable = (shop: Shop, budget: readonly Budgeted[], units: Units): CorrectionTable | null => {
  const { stop, operation } = shop
  const byDepth = !operation.dimensions.some(({ id, fixed }) => id === 'bottomDiameter' && fixed === true)
  const sum = summedError(budget, byDepth)
  if (!(sum > 0) || !worthReading(shop.reads?.bottom, sum)) return null
  const quantum = quantumOf(sum, shop, units)
  const base = byDepth ? operation.surface : 0
  const expected = base + Math.round((stop.expected - base) / quantum) * quantum
  const troubles: Trouble[] = []
  const readings = readingsAround(expected, sum, Math.max(stepOnDiameter(sum, shop), quantum), quantum)
  const rows = readings.flatMap((measured) => {
    const corrected = correctedFor(shop, measured)
    const trouble = troubleIn(shop, corrected)
    if (trouble === null) return [rowOf(measured, corrected, stop.finishes)]
    troubles.push(trouble)
    return []
  })
  const most = Math.floor(sum / quantum + 1e-6) * quantum
  const without = stretches(readings, rows)
  const reason = troubles.length === 0 ? null : whyNot(troubles[0]!)
  const between = betweenRows(
    rows.map(({ measured, deeper }) => ({ measured, steps: deeper })),
    without.flat(),
    (measured, deeper) => troubleIn(shop, finishedAt(shop, measured - stop.expected, deeper), 1) === null,
  )
  const table = { at: stop.at, finishes: stop.finishes, by: stop.by, expected, byDepth, most, quantum }
  return { ...table, rows, without, reason, between }

  function rowOf(measured: Length, { deeper, bottom, within }: Corrected, finishes: readonly number[]): Row {
    return {
      measured,
      counts: finishes.map((index) => operation.moves[index]!.count! + deeper),
      deeper,
      bottom,
      within,
    }
  }
}

/** The effect of all stated errors together on the bottom, pm of diameter. */
export const summedError = (budget: readonly Budgeted[], byDepth: boolean): Length => {
  const one = budget.find(({ id }) => id === (byDepth ? 'depth' : 'bottomDiameter'))
  if (one === undefined) return 0
  return Math.max(one.high - one.planned, one.planned - one.low) * (byDepth ? 2 : 1)
}

/** The step of the dial on the diameter, doubled or halved until two or three steps fit into the error. This gives five or seven rows, and the ends. */
const stepOnDiameter = (sum: Length, shop: Shop): Length => {
  let step = finishStep(shop)
  while (sum >= 4 * step) step *= 2
  while (sum < 2 * step) step /= 2
  return step
}

/** Half thousandths of an inch or hundredths of a millimeter; ten-thousandths or micrometers if the steps are that fine; never finer than what it is taken with is read. */
const quantumOf = (sum: Length, shop: Shop, units: Units): Length => {
  const coarse = units === 'inch' ? INCH / 2000 : MM / 100
  const usual = stepOnDiameter(sum, shop) >= 2 * coarse ? coarse : units === 'inch' ? INCH / 10_000 : MM / 1000
  return Math.max(usual, shop.reads?.bottom?.reads ?? 0)
}

/** From the largest to the smallest, as far as the error reaches on both sides. */
export const readingsAround = (expected: Length, sum: Length, step: Length, quantum: Length): readonly Length[] => {
  const whole = (length: Length): Length => Math.floor(length / quantum + 1e-6) * quantum
  const offsets = Array.from({ length: Math.floor(sum / step) + 1 }, (_, steps) => whole(steps * step))
  const most = whole(sum)
  if (most > offsets.at(-1)!) offsets.push(most)
  return [...offsets.toReversed(), ...offsets.slice(1).map((offset) => -offset)].map((offset) => expected + offset)
}
