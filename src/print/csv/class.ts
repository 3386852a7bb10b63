import { gradesCsv } from './grades.ts'
import { keyCsv } from './key.ts'
import { worksheetCsv } from './worksheet.ts'

export const printers = {
  worksheet: worksheetCsv,
  key: keyCsv,
  grades: gradesCsv,
}
