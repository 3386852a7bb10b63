import { gradesJson } from './grades.ts'
import { keyJson } from './key.ts'
import { worksheetJson } from './worksheet.ts'

export const printers = {
  worksheet: worksheetJson,
  key: keyJson,
  grades: gradesJson,
}
