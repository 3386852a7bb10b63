import { worksheetSvg } from './sketch.ts'

export const printers = {
  worksheet: worksheetSvg,
}
