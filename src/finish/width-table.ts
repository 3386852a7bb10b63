import type { Budgeted } from '../budget/budgeted.ts'
import { stepTravel } from '../dials/travel.ts'
import type { Slide } from '../moves/operation.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import { type Between, betweenRows } from './between.ts'
import { correctedFor, type Shop } from './measured.ts'
import { stretches, whyNot } from './no-row.ts'
import { worthReading } from './reads.ts'
import { type CorrectionTable, readingsAround } from './table.ts'
import { type Trouble, troubleIn } from './trouble.ts'
import { anyAcross, fromHeadstock, placesBefore, slideOf, stepsAcross, withAcross, withTool } from './width.ts'

/** One width, and how far to feed across for it. */
export type WidthRow = {
  /** Width of the groove between its walls at the stop, as measured, pm. */
  readonly measured: Length
  /** Moves of the slide that feeds across that have another reading in this row, with that reading in readable steps. */
  readonly moves: readonly { readonly index: number; readonly count: number }[]
  /** The finished width, pm. */
  readonly width: Length
  readonly within: boolean | null
}

export type WidthTable = {
  readonly at: number
  /** The slide that feeds across. */
  readonly slide: Slide
  /** As a caliper reads it. */
  readonly expected: Length
  /** A larger difference from the expected width is not explained by any stated error, pm. */
  readonly most: Length
  /** From the widest to the narrowest. Every row also passes together with the first and the last row of the table for the bottom. */
  readonly rows: readonly WidthRow[]
  readonly without: readonly (readonly Length[])[]
  readonly reason: string | null
  readonly between: Between
  /** Beside a shoulder the places before the feed across move, not its end. */
  readonly begins: boolean
  /** The far wall has a plunge of its own: the tool goes over to it, and is not fed across. */
  readonly over: boolean
  /** The smallest step that is read, pm. */
  readonly quantum: Length
}

/** A limit missed by a nanometer is met. */
const SLACK: Length = 1000

/**
 * After roughing the width of a groove is the width of its tool and the travel from the first place to the last. So an error of the width is an error of
 * the tool, and the feed across ends earlier or later by that. Only for square walls, fed across by a parallel compound or by a carriage with readings:
 * the width of a V depends on its depth too, and `finish` uses both.
 */
export const widthTable = (
  shop: Shop,
  budget: readonly Budgeted[],
  units: Units,
  diameters: CorrectionTable | null,
): WidthTable | null => {
  const { operation, stop } = shop
  const across = anyAcross(operation, stop.at)
  const sum = summedWidth(budget)
  if (
    across === null ||
    sum === 0 ||
    !worthReading(shop.reads?.width, sum) ||
    operation.dimensions.some(({ id }) => id === 'angle')
  )
    return null
  const real = widthThere(shop, stop.expected)
  if (real === null) return null
  const quantum = Math.max(units === 'inch' ? INCH / 2000 : MM / 100, shop.reads?.width?.reads ?? 0)
  const expected = Math.round(real / quantum) * quantum
  const slide = slideOf(operation, across)
  const step = stepAlong(sum, shop, slide, quantum)
  const readings = readingsAround(expected, sum, step, quantum)
  const tried = readings.map((measured) => rowFor(shop, real, measured, diameters))
  const rows = tried.flatMap((one) => (typeof one === 'string' ? [] : [one]))
  const reason = tried.find((one) => typeof one === 'string') ?? null
  // No further than the rows reach on either side: a tool that cannot be fed back past its first place has fewer rows there.
  const most = Math.min(
    Math.floor(sum / quantum + 1e-6) * quantum,
    ...[rows[0], rows.at(-1)].map((row) => Math.abs((row?.measured ?? expected) - expected)),
  )
  const kept = rows.filter(({ measured }) => Math.abs(measured - expected) <= most)
  const over = operation.moves[across]!.action !== 'feed-across'
  const table = { at: stop.at, slide, expected, most, reason, quantum, begins: fromHeadstock(operation), over }
  if (kept.length < 3 || most <= 0) return reason === null ? null : { ...table, rows: [], without: [], between: 'none' }
  const without = stretches(
    readings.filter((measured) => Math.abs(measured - expected) <= most),
    kept,
  )
  return { ...table, rows: kept, without, between: betweenWidths(shop, real, kept, without.flat()) }
}

/** The row, planned and replayed from the measured width, and together with the end rows of the other table. If a replay fails: why. */
const rowFor = (shop: Shop, real: Length, measured: Length, diameters: CorrectionTable | null): WidthRow | string => {
  const { stop } = shop
  const wider = measured - real
  const other: Shop = { ...shop, operation: withTool(shop.operation, wider) }
  const { steps, corrected: alone } = stepsAcross(other, stop.expected, wider)
  const there = alone.trace.at[stop.at]?.find(({ id }) => id === 'width')?.surely ?? null
  if (there === null || Math.abs(there - measured) > SLACK) return 'that width is not the tool alone'
  const together: Shop = { ...other, operation: withAcross(other, steps) }
  const width = alone.trace.sizes.find(({ id }) => id === 'width')?.surely ?? null
  const trouble: Trouble | null = troubleIn(shop, alone)
  if (trouble !== null) return whyNot(trouble)
  if (width === null || !holdsWith(together, width, diameters)) return 'it does not hold with every bottom'
  const limits = shop.operation.dimensions.find(({ id }) => id === 'width')?.limits ?? null
  const within = limits === null ? null : width >= limits[0] - SLACK && width <= limits[1] + SLACK
  if (within === false) return 'no reading comes within the limits'
  return { measured, moves: movesAcross(together, shop.operation.moves), width, within }
}

/** Where the reading changes between two rows: replayed with the tool that cuts the width there. */
const betweenWidths = (shop: Shop, real: Length, rows: readonly WidthRow[], without: readonly Length[]): Between => {
  const stepped = rows.map(({ measured, moves: [first] }) => ({
    measured,
    steps: first!.count - shop.operation.moves[first!.index]!.count!,
  }))
  return betweenRows(stepped, without, (measured, steps) => {
    const other: Shop = { ...shop, operation: withTool(shop.operation, measured - real) }
    const corrected = correctedFor({ ...other, operation: withAcross(other, steps) }, shop.stop.expected)
    return troubleIn(shop, corrected, 1) === null
  })
}

/** With the largest and the smallest bottom of the other table: the same finish as in its row, the same width, and no fault. */
const holdsWith = (together: Shop, width: Length, diameters: CorrectionTable | null): boolean => {
  if (diameters === null) return true
  const { rows } = diameters
  return [rows[0]!, rows.at(-1)!].every((row) => {
    const both = correctedFor(together, row.measured)
    const across = both.trace.sizes.find(({ id }) => id === 'width')?.surely ?? null
    return (
      both.deeper === row.deeper &&
      troubleIn(together, both) === null &&
      across !== null &&
      Math.abs(across - width) <= SLACK &&
      Math.abs(both.bottom - row.bottom) <= SLACK
    )
  })
}

/** The feed across, or beside a shoulder the places before it: given in every row, also where the reading is as written. */
const movesAcross = ({ operation, stop }: Shop, written: Shop['operation']['moves']): WidthRow['moves'] => {
  const across = anyAcross(operation, stop.at)!
  const before = placesBefore(operation, stop.at, across)
  return operation.moves.flatMap(({ slide, count }, index) => {
    const own = fromHeadstock(operation) ? before.includes(index) : index === across
    if (
      !own ||
      slide !== slideOf(operation, across) ||
      typeof count !== 'number' ||
      typeof written[index]!.count !== 'number'
    )
      return []
    return [{ index, count }]
  })
}

const widthThere = (shop: Shop, bottom: Length): Length | null =>
  correctedFor(shop, bottom).trace.at[shop.stop.at]?.find(({ id }) => id === 'width')?.surely ?? null

/** The effect of all stated errors together on the width, pm. */
export const summedWidth = (budget: readonly Budgeted[]): Length => {
  const one = budget.find(({ id }) => id === 'width')
  return one === undefined ? 0 : Math.max(one.high - one.planned, one.planned - one.low)
}

/** The step of the slide that feeds across, doubled or halved until two or three fit into the error, but no finer than a caliper shows. */
const stepAlong = (sum: Length, { lathe }: Shop, slide: Slide, quantum: Length): Length => {
  let step = stepTravel(slide === 'carriage' ? lathe.carriage! : lathe.compound.scale)
  while (sum >= 4 * step) step *= 2
  while (sum < 2 * step && step / 2 >= quantum) step /= 2
  return Math.max(step, quantum)
}
