import type { Sheet } from '../../sheet/sheet.ts'
import type { Parts } from '../format.ts'
import { printCards } from './card/print.ts'
import { printCheck } from './check.ts'
import { printGrind } from './grind.ts'
import { printText } from './print.ts'
import { printReplay } from './replay.ts'

export const printers = {
  sheet: (sheet: Sheet, parts?: Parts) => (parts?.card === true ? printCards(sheet, parts) : printText(sheet, parts)),
  finish: printText,
  grind: printGrind,
  check: printCheck,
  replay: printReplay,
}
