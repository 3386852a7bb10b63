import { gradesText } from './grades.ts'
import { keyText } from './key.ts'
import { pageText } from './page.ts'
import { worksheetText } from './worksheet.ts'

export const printers = {
  worksheet: worksheetText,
  key: keyText,
  grades: gradesText,
  page: pageText,
}
