import type { FormatPrinters } from '../format.ts'
import { printCheckJson } from './check.ts'
import { printGrindJson } from './grind.ts'
import { printJson } from './print.ts'
import { printReplayJson } from './replay.ts'

/** For programs. */
export const json: FormatPrinters = {
  endings: ['.json'],
  sheet: printJson,
  finish: printJson,
  grind: printGrindJson,
  check: printCheckJson,
  replay: printReplayJson,
  namesSkipped: true,
}
