import { printCheckJson } from './check.ts'
import { printGrindJson } from './grind.ts'
import { printJson } from './print.ts'
import { printReplayJson } from './replay.ts'

export const printers = {
  sheet: printJson,
  finish: printJson,
  grind: printGrindJson,
  check: printCheckJson,
  replay: printReplayJson,
}
