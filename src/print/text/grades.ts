import type { GradedLearner, GradedQuestion, Grades } from '../../grading/grades.ts'
import { beside, COLUMNS, leftAndRight, nameText, plain } from './columns.ts'

/** A line a learner, and for the teacher a table by question. */
export const gradesText = ({ title, learners, questions, teach }: Grades): string => {
  const lines = [
    '='.repeat(COLUMNS),
    ...leftAndRight(title.toUpperCase(), `GRADES OF ${learners.length}`),
    '='.repeat(COLUMNS),
    ...learners.flatMap(learnerLines),
    '',
    'BY QUESTION                                            right   wrong   blank',
    ...questions.flatMap(questionLines),
    ...(teach.length === 0 ? [] : ['', 'TEACH AGAIN']),
    ...teach.flatMap(({ teach, times }) => beside(`${String(times).padStart(4)} x`, 8, teach)),
  ]
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`
}

const learnerLines = ({ sheet, learner, score, outOf, blanks, note }: GradedLearner): string[] => {
  const name = nameText(learner ?? '', 34)
  const marks = score === null ? 'not graded' : `${score} of ${outOf}`
  const causes = [...new Set(blanks.flatMap(({ causes }) => causes))].join(', ')
  return [
    `${sheet.padEnd(5)}${name.padEnd(36)}${marks.padEnd(12)}`,
    ...(note === null ? [] : beside('', 5, note)),
    ...(causes === '' ? [] : beside('', 5, causes)),
  ]
}

const questionLines = ({ asks, right, wrong, blank, causes }: GradedQuestion): string[] => [
  `${plain(asks).slice(0, 52).padEnd(54)}${[right, wrong, blank].map((n) => String(n).padStart(6)).join('  ')}`,
  ...causes.flatMap(({ says, times }) => beside(`${String(times).padStart(7)} x`, 11, says)),
]
