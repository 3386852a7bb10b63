import type { Phrase } from '../../phrase/phrase.ts'
import type { Expected, ProofLine, SheetFeature, StopTable } from '../sheet.ts'
import type { SupervisedCheck } from '../supervised.ts'
import type { Column } from './columns.ts'

/** One feature on one page for who knows the work: boxes to tick, and a table of its cuts. */
export type Card = { readonly feature: PlannedFeature; readonly blocks: readonly Block[] }
export type PlannedFeature = Extract<SheetFeature, { status: 'planned' }>

export type Block =
  | { readonly kind: 'boxes'; readonly boxes: readonly Box[] }
  | { readonly kind: 'cuts'; readonly columns: readonly Column[]; readonly rows: readonly Row[] }
  | { readonly kind: 'supervised'; readonly check: SupervisedCheck }
  | Stop

/** One thing to do and to tick. */
export type Box = {
  readonly step: number
  readonly thing: string
  readonly does: Phrase
  readonly steps?: readonly [from: number, to: number]
}

/** One cut: what each column is turned to, in the order of the columns. */
type Row = {
  readonly from: number
  readonly to: number
  readonly cells: readonly (readonly CellPart[])[]
}

/** One turn of a dial in a cell. */
export type CellPart = {
  readonly step: number
  readonly slowly: boolean
  /** The zeros on the way. */
  readonly passing: Phrase
  readonly at: Phrase
  /** The same as whole turns to count, if it is that. */
  readonly whole: Phrase | null
  /** The reading may be another one, by what is measured at the stop. */
  readonly corrected: boolean
}

/** Where the work is measured: the sizes, with their limits at the last stop, and what follows from them. */
export type Stop = {
  readonly kind: 'stop'
  readonly sizes: readonly (Expected & { readonly limits: ProofLine['limits'] })[]
  readonly tables: readonly StopTable[]
  /** What is still to cut, and what else stands under the step. */
  readonly rules: readonly Phrase[]
}
