import type { Key } from '../exercise/key.ts'
import type { Worksheet } from '../exercise/worksheet.ts'
import type { Grades } from '../grading/grades.ts'
import type { Page } from '../grading/page.ts'
import type { GrindSheet } from '../sheet/grind/grind.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { CheckReport, Paint } from './check-report.ts'
import type { ReplayReport } from './replay-report.ts'

/** A printer is a function from neutral data to the bytes of a file; one for each thing that a command prints. */
export type Printers = {
  readonly sheet: Printer
  /** The sheet of what remains of a feature. */
  readonly finish: Printer
  readonly grind: (sheet: GrindSheet) => string
  readonly check: (report: CheckReport, paint: Paint) => string
  readonly replay: (report: ReplayReport) => string
}

/** The same for a class; these are loaded apart. */
export type ClassPrinters = {
  /** A learner's sheet of an exercise, and the key to all of them. */
  readonly worksheet: (sheet: Worksheet) => string
  readonly key: (key: Key) => string
  /** How a class did, and what one learner gets back. */
  readonly grades: (grades: Grades) => string
  readonly page: (page: Page) => string
}

export type Printer = (sheet: Sheet, parts?: Parts) => string

/** What is printed only on request. */
export type Parts = {
  readonly inspection?: boolean
  /** A page a feature, for who knows the work, instead of the numbered sheet. */
  readonly card?: boolean
  /** How many signs a line has. */
  readonly width?: number
}

/**
 * What a command prints: the sheet, what remains of a feature, how tools are ground, or the result of checked jobs or
 * of a list of moves.
 */
export type Printed = keyof Printers
export type ClassPrinted = keyof ClassPrinters

/** What the command line and its help go by. The printers themselves are loaded only when one of them prints. */
export type FormatFacts<P extends Printed = Printed> = {
  readonly prints: readonly P[]
  readonly load: () => Promise<Pick<Printers, P>>
  readonly forClass?: {
    readonly prints: readonly ClassPrinted[]
    readonly load: () => Promise<Partial<ClassPrinters>>
  }
  /**
   * What a format that has only the moves or only the drawings is called, so that parts on request have no place in it:
   * "a table of moves".
   */
  readonly movesAlone?: string
  /** Endings of the files that it is printed to where no format is asked for, the period included. */
  readonly endings: readonly string[]
  /** Its sheet has pictures, so that it needs the data that they are drawn from. */
  readonly drawn?: boolean
  /** Prints lines of a width that is asked for, and a card instead of the sheet. */
  readonly inLines?: boolean
  /** Its report of a check names the files that were skipped; otherwise they are listed on standard error. */
  readonly namesSkipped?: boolean
}

/** A format that prints what it says it prints, the sheet at the least: the compiler compares the two. */
export const format = <P extends Printed>(facts: FormatFacts<P | 'sheet'>): FormatFacts<P | 'sheet'> => facts
