import type { FormatPrinters } from '../format.ts'
import { printHtml } from './print.ts'

/** For a phone, a screen or paper. */
export const html: FormatPrinters = { sheet: printHtml, endings: ['.html', '.htm'], drawn: true }
