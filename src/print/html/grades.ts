import type { GradedBlank, GradedLearner, Grades } from '../../grading/grades.ts'
import type { Page } from '../../grading/page.ts'
import { type Child, type Markup, tag } from '../markup.ts'
import { overlayOf } from '../svg/overlay.ts'
import { framed } from '../svg/picture.ts'
import { paperPage } from './paper.ts'
import { cells, table } from './phrases.ts'

/** The teacher's page. */
export const gradesHtml = ({ title, learners, questions, teach }: Grades): string =>
  paperPage(`${title}, grades`, [
    tag('header', {}, tag('h1', {}, `${title}: grades`)),
    table(
      ['sheet', 'learner', 'marks', 'likely causes', 'note'],
      learners.map((each) => tag('tr', {}, ...cells('td', learnerCells(each)))),
    ),
    tag('h2', {}, 'By question'),
    table(
      ['question', 'right', 'wrong', 'blank', 'which mistake, how often'],
      questions.map(({ asks, right, wrong, blank, causes }) =>
        tag(
          'tr',
          {},
          ...cells('td', [
            asks,
            ...[right, wrong, blank].map(String),
            causes.map(({ says, times }) => `${says}: ${times}`).join('; '),
          ]),
        ),
      ),
    ),
    ...(teach.length === 0 ? [] : [tag('h2', {}, 'Teach again')]),
    tag('ul', {}, ...teach.map(({ teach, times }) => tag('li', {}, `${teach} (${times})`))),
  ])

const learnerCells = ({ sheet, learner, score, outOf, blanks, note }: GradedLearner): string[] => [
  sheet,
  learner ?? '',
  score === null ? 'not graded' : `${score} of ${outOf}`,
  [...new Set(blanks.flatMap(({ causes }) => causes))].join(', '),
  note ?? '',
]

/** What a learner gets back. */
export const pageHtml = ({ title, graded }: Page): string =>
  paperPage(`${title}, sheet ${graded.sheet}`, [
    tag(
      'header',
      {},
      tag('h1', {}, title),
      tag(
        'p',
        { class: 'who' },
        tag('span', {}, `sheet ${graded.sheet}`),
        tag('span', {}, graded.learner ?? ''),
        tag('span', {}, graded.score === null ? 'not graded' : `${graded.score} of ${graded.outOf}`),
      ),
    ),
    ...(graded.note === null ? [] : [tag('p', {}, graded.note)]),
    table(['', '', 'asks', 'your answer', 'right', 'why, and what it would have cut'], graded.blanks.map(blankRow)),
    ...graded.pictures.map((each) => tag('figure', {}, framed(overlayOf(each)))),
    ...(graded.cuts.length === 0 ? [] : [tag('p', {}, `With all your readings: ${graded.cuts.join('; ')}.`)]),
  ])

const blankRow = (blank: GradedBlank): Markup =>
  tag(
    'tr',
    {},
    ...cells('td', [
      tag('span', { class: 'line' }, `(${blank.number})`),
      SIGNS[blank.verdict],
      blank.asks,
      blank.given,
      blank.right,
      whyOf(blank),
    ]),
  )

const SIGNS = { right: '✓', 'follow-on': '✓', wrong: '✗', blank: '–', ungraded: '?' } as const

const whyOf = ({ verdict, says, wouldCut, working }: GradedBlank): Child => {
  if (verdict === 'follow-on') return 'follows from your earlier answer'
  if (verdict === 'ungraded') return 'cannot be read: not graded'
  if (verdict === 'right') return ''
  return [
    tag('div', {}, working),
    ...says.map((each, i) => tag('div', {}, `${i === 0 ? '' : 'or '}${each}`)),
    ...(wouldCut === null ? [] : [tag('div', {}, tag('strong', {}, `cuts: ${wouldCut}`))]),
  ]
}
