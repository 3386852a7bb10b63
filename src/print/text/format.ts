import type { FormatPrinters } from '../format.ts'
import { printCheck } from './check.ts'
import { printGrind } from './grind.ts'
import { printText } from './print.ts'
import { printReplay } from './replay.ts'

/** For people. */
export const text: FormatPrinters = {
  endings: ['.txt'],
  sheet: printText,
  finish: printText,
  grind: printGrind,
  check: printCheck,
  replay: printReplay,
}
