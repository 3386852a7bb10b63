import type { GrindSheet } from '../sheet/grind/grind.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { CheckReport, Paint } from './check-report.ts'
import type { ReplayReport } from './replay-report.ts'

/** A format is a function from neutral data to the bytes of a file, for each thing that it prints; what it leaves out, it does not print. */
export type FormatPrinters = {
  readonly sheet: Printer
  /** The sheet of what remains of a feature. */
  readonly finish?: Printer
  readonly grind?: (sheet: GrindSheet) => string
  readonly check?: (report: CheckReport, paint: Paint) => string
  readonly replay?: (report: ReplayReport) => string
  /** What it is where it has the moves, or the drawings, alone, so that nothing asked for besides has a place in it: "a table of moves". */
  readonly movesAlone?: string
  /** Endings of files that it is printed to where no format is asked for, the period with them. */
  readonly endings: readonly string[]
  /** Its sheet has pictures, so that it wants what they are drawn from. */
  readonly drawn?: boolean
  /** What it prints of a check names the files that were skipped; otherwise they are told on standard error. */
  readonly namesSkipped?: boolean
}

export type Printer = (sheet: Sheet, parts?: Parts) => string

/** What is printed only on request. */
export type Parts = { readonly inspection?: boolean }
