import type { Key } from '../../exercise/key.ts'
import { row } from './cells.ts'

export const keyCsv = ({ sheets }: Key): string =>
  [
    row(['sheet', 'learner', 'id', 'asks', 'right', 'within', 'working', 'marks']),
    ...sheets.flatMap(({ sheet, learner, answers }) =>
      answers.map(({ id, asks, key, within, working, outOf }) =>
        row([sheet, learner ?? '', id, asks, key, within, working, outOf]),
      ),
    ),
  ].join('')
