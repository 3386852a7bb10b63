import type { FormatPrinters } from '../format.ts'
import { printCsv } from './print.ts'

/** For spreadsheets, and to be replayed again. */
export const csv: FormatPrinters = { sheet: printCsv, movesAlone: 'a table of moves', endings: ['.csv'] }
