import { gradesHtml, pageHtml } from './grades.ts'
import { keyHtml } from './key.ts'
import { worksheetHtml } from './worksheet.ts'

export const printers = {
  worksheet: worksheetHtml,
  key: keyHtml,
  grades: gradesHtml,
  page: pageHtml,
}
