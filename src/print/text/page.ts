import type { GradedBlank } from '../../grading/grades.ts'
import type { Page } from '../../grading/page.ts'
import { beside, COLUMNS, leftAndRight, nameText } from './columns.ts'

/** What a learner gets back: each answer, and of a wrong one why, and what it would have cut. */
export const pageText = ({ title, graded }: Page): string => {
  const { sheet, learner, score, outOf, blanks, cuts, note } = graded
  const lines = [
    '='.repeat(COLUMNS),
    ...leftAndRight(title.toUpperCase(), `sheet ${sheet}`),
    '='.repeat(COLUMNS),
    `${nameText(learner ?? '', 60).padEnd(64)}${(score === null ? 'not graded' : `${score} of ${outOf}`).padStart(16)}`,
    ...(note === null ? [] : beside('Note', 12, note)),
    '',
    ...blanks.flatMap(blankLines),
    ...(cuts.length === 0 ? [] : ['', ...beside('With all your readings: ', 24, cuts.join('; '))]),
  ]
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`
}

const MARKS = { right: '  +', 'follow-on': '  +', wrong: '  -', blank: '  -', ungraded: '  ?' } as const

const blankLines = (blank: GradedBlank): string[] => {
  const { number, asks, given, right, verdict, says, wouldCut, working } = blank
  const head = `${MARKS[verdict]} (${number})`
  if (verdict === 'right') return beside(head, 9, `${asks}: ${given}`)
  if (verdict === 'follow-on')
    return beside(head, 9, `${asks}: ${given}, which follows from your earlier answer; by the sheet it is ${right}`)
  if (verdict === 'ungraded') return beside(head, 9, `${asks}: ${given} cannot be read: not graded`)
  return [
    ...beside(head, 9, `${asks}: ${verdict === 'blank' ? 'left blank' : given}; right is ${right}`),
    ...beside('', 11, working),
    ...says.flatMap((each, i) => beside(i === 0 ? '           why' : '           or', 16, each)),
    ...(wouldCut === null ? [] : beside('           cuts', 16, wouldCut)),
  ]
}
