import { printCsv } from './print.ts'

export const printers = { sheet: printCsv }
