import type { FormatPrinters } from '../format.ts'
import { printCsv } from './print.ts'

/** For spreadsheets, and as a list of moves that can be replayed. */
export const csv: FormatPrinters = { sheet: printCsv, movesAlone: 'a table of moves', endings: ['.csv'] }
