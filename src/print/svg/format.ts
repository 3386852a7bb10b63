import type { FormatPrinters } from '../format.ts'
import { printSvg } from './print.ts'

/** The drawings alone. */
export const svg: FormatPrinters = { sheet: printSvg, endings: ['.svg'], drawn: true, movesAlone: 'the drawings alone' }
