import { printCheck } from './check.ts'
import { printGrind } from './grind.ts'
import { printText } from './print.ts'
import { printReplay } from './replay.ts'

export const printers = {
  sheet: printText,
  finish: printText,
  grind: printGrind,
  check: printCheck,
  replay: printReplay,
}
