import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import type { Between } from './between.ts'
import type { CorrectionTable } from './table.ts'
import { fromHeadstock } from './width.ts'
import type { WidthTable } from './width-table.ts'

/** The tables that stand under the stop of the sheet; null where there is none. */
export type Paper = { readonly bottom: CorrectionTable | null; readonly width: WidthTable | null }
export const NO_PAPER: Paper = { bottom: null, width: null }

type Table = {
  readonly expected: Length
  readonly most: Length
  readonly rows: readonly { readonly measured: Length }[]
  readonly without: readonly (readonly Length[])[]
  readonly between: Between
}

/** A reading that stands to a nanometer is that reading. */
const SLACK: Length = 1000

/** Further off than a table goes: no stated error explains it. */
export const offPaper = (table: Table, measured: Length): boolean =>
  Math.abs(measured - table.expected) > table.most + SLACK

/**
 * What the rows tell who reads them: a row its own value; between two rows the nearer one's, or in proportion where they stand more than one step
 * apart, in doubt the lower value (`up`: the higher); past the last row that row's. Null where no row stands next to the reading.
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
  // Never the zero below zero.
  return (up ? Math.floor(exact + 0.5 + 1e-6) : Math.ceil(exact - 0.5 - 1e-6)) + 0
}

/** Readable steps that every finish goes deeper; in doubt the shallower. */
export const deeperOnPaper = ({ bottom }: Paper, measured: Length): number | null =>
  bottom === null ? null : readOff(bottom, measured, (row) => bottom.rows[row]!.deeper, false)

/** Readable steps that the feed across goes further, or from a shoulder begins further on; in doubt the narrower. */
export const acrossOnPaper = ({ width }: Paper, operation: Operation, measured: Length): number | null => {
  if (width === null) return null
  const moved = (row: number): number => {
    const { index, count } = width.rows[row]!.moves[0]!
    return count - operation.moves[index]!.count!
  }
  return readOff(width, measured, moved, fromHeadstock(operation))
}
