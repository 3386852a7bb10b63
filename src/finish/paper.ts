import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import type { Between } from './between.ts'
import type { CorrectionTable } from './table.ts'
import { fromHeadstock } from './width.ts'
import type { WidthTable } from './width-table.ts'

/** The tables under the stop of the sheet; null if there is none. */
export type Paper = { readonly bottom: CorrectionTable | null; readonly width: WidthTable | null }
export const NO_PAPER: Paper = { bottom: null, width: null }

type Table = {
  readonly expected: Length
  readonly most: Length
  readonly rows: readonly { readonly measured: Length }[]
  readonly without: readonly (readonly Length[])[]
  readonly between: Between
}

/** Sizes within a nanometer are the same. */
const SLACK: Length = 1000

/** Beyond the range of a table: no stated error explains it. */
export const offPaper = (table: Table, measured: Length): boolean =>
  Math.abs(measured - table.expected) > table.most + SLACK

/**
 * What a person reads from the rows. At a row: its value. Between two rows: the value of the nearer one, or in proportion if they are more than one
 * step apart; in doubt the lower value (`up`: the higher). Past the last row: the value of that row. Null if there is no row next to the size.
 */
export const readOff = (table: Table, measured: Length, value: (row: number) => number, up: boolean): number | null => {
  if (table.rows.length === 0 || offPaper(table, measured)) return null
  const readings = [
    ...table.rows.map(({ measured: at }, row) => ({ at, row })),
    ...table.without.flat().map((at) => ({ at, row: null })),
  ].sort((a, b) => b.at - a.at)
  const same = readings.find(({ at }) => Math.abs(at - measured) <= SLACK)
  const over = same ?? readings.findLast(({ at }) => at > measured) ?? readings[0]!
  const under = same ?? readings.find(({ at }) => at < measured) ?? readings.at(-1)!
  if (over.row === null || under.row === null || (same === undefined && table.between === 'none')) return null
  const [one, other] = [value(over.row), value(under.row)]
  const share = over.at === under.at ? 0 : (over.at - measured) / (over.at - under.at)
  const exact = one + (other - one) * share
  // Never minus zero.
  return (up ? Math.floor(exact + 0.5 + 1e-6) : Math.ceil(exact - 0.5 - 1e-6)) + 0
}

/** By how many readable steps every finish goes deeper; in doubt the shallower. */
export const deeperOnPaper = ({ bottom }: Paper, measured: Length): number | null =>
  bottom === null ? null : readOff(bottom, measured, (row) => bottom.rows[row]!.deeper, false)

/** By how many readable steps the feed across goes further, or beside a shoulder begins further on; in doubt the narrower. */
export const acrossOnPaper = ({ width }: Paper, operation: Operation, measured: Length): number | null => {
  if (width === null) return null
  const moved = (row: number): number => {
    const { index, count } = width.rows[row]!.moves[0]!
    return count - operation.moves[index]!.count!
  }
  return readOff(width, measured, moved, fromHeadstock(operation))
}
