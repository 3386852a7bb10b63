import type { GrindSheet } from '../sheet/grind/grind.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { CheckReport, Paint } from './check-report.ts'
import type { ReplayReport } from './replay-report.ts'

/**
 * A format is a function from neutral data to the bytes of a file, for each thing that it prints; a missing function
 * means that it does not print that.
 */
export type FormatPrinters = {
  readonly sheet: Printer
  /** The sheet of what remains of a feature. */
  readonly finish?: Printer
  readonly grind?: (sheet: GrindSheet) => string
  readonly check?: (report: CheckReport, paint: Paint) => string
  readonly replay?: (report: ReplayReport) => string
  /**
   * What a format that has only the moves or only the drawings is called, so that parts on request have no place in it:
   * "a table of moves".
   */
  readonly movesAlone?: string
  /** Endings of the files that it is printed to where no format is asked for, the period included. */
  readonly endings: readonly string[]
  /** Its sheet has pictures, so that it needs the data that they are drawn from. */
  readonly drawn?: boolean
  /** Its report of a check names the files that were skipped; otherwise they are listed on standard error. */
  readonly namesSkipped?: boolean
}

export type Printer = (sheet: Sheet, parts?: Parts) => string

/** What is printed only on request. */
export type Parts = { readonly inspection?: boolean }
