import { printSvg } from './print.ts'

export const printers = { sheet: printSvg, finish: printSvg }
