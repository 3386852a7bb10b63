import type { Grades } from '../../grading/grades.ts'
import { row } from './cells.ts'

/** For a gradebook. */
export const gradesCsv = ({ learners }: Grades): string =>
  [
    row(['sheet', 'learner', 'score', 'out-of', 'causes', 'note']),
    ...learners.map(({ sheet, learner, score, outOf, blanks, note }) =>
      row([
        sheet,
        learner ?? '',
        score ?? '',
        outOf,
        [...new Set(blanks.flatMap(({ causes }) => causes))].join(' '),
        note ?? '',
      ]),
    ),
  ].join('')
