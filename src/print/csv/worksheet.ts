import type { Worksheet } from '../../exercise/worksheet.ts'
import { row } from './cells.ts'

/** The answer form as a table: the learner fills in the last column. */
export const worksheetCsv = ({ sheet, learner, blanks }: Worksheet): string =>
  [
    row(['sheet', 'learner', 'id', 'asks', 'value']),
    ...blanks.map(({ id, asks }) => row([sheet, learner ?? '', id, asks, ''])),
  ].join('')
