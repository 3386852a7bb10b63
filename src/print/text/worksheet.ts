import type { OpenFeature, Worksheet } from '../../exercise/worksheet.ts'
import { heldWords, words } from '../../phrase/words.ts'
import { beside, COLUMNS, leftAndRight, nameText, plain, wrap } from './columns.ts'
import { LABEL } from './front.ts'
import { stepLines } from './steps.ts'

/** A learner's sheet on paper. */
export const worksheetText = (sheet: Worksheet): string => {
  const lines = [
    '='.repeat(COLUMNS),
    ...leftAndRight(sheet.title.toUpperCase(), `sheet ${sheet.sheet}`),
    '='.repeat(COLUMNS),
    `Name  ${sheet.learner === null ? '_'.repeat(32) : nameText(sheet.learner, 32)}`.padEnd(40) +
      `Date ${'_'.repeat(14)}  Marks ____ of ${sheet.outOf}`,
    ...beside('Learn', LABEL, sheet.teaches),
    ...beside('Job', LABEL, sheet.job),
    ...facts(sheet, sheet.heading),
    '',
    ...beside(' !', 3, sheet.cautions.join(' ')),
    ...sheet.features.flatMap((feature) => featureLines(sheet, feature)),
    ...questions(sheet),
    ...sheet.features.flatMap((feature) => steps(sheet, feature)),
    ...footer(sheet),
  ]
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`
}

const facts = ({ units }: Worksheet, heading: OpenFeature['heading']): string[] =>
  heading.flatMap(({ label, says }) =>
    says.flatMap((phrase, i) => beside(i === 0 ? label : '', LABEL, heldWords(phrase, units))),
  )

const featureLines = (sheet: Worksheet, feature: OpenFeature): string[] => [
  '',
  `== ${plain(`${feature.kind.toUpperCase()}: ${feature.name}`)} `.padEnd(COLUMNS, '=').slice(0, COLUMNS),
  ...facts(sheet, feature.heading),
  ...feature.warnings.flatMap((phrase) => beside('WARNING', LABEL, words(phrase, sheet.units))),
]

/** After all that is given; the name again where there are several. */
const steps = (sheet: Worksheet, { index, name }: OpenFeature): string[] => {
  const own = sheet.steps.filter((step) => step.feature === index)
  if (own.length === 0) return []
  return [...(sheet.features.length > 1 ? ['', ...beside('', 5, name)] : []), ...stepLines(own, { units: sheet.units })]
}

const questions = ({ questions, units }: Worksheet): string[] =>
  questions.length === 0
    ? []
    : [
        '',
        ...questions.flatMap(({ number, says, choices }) => [
          ...beside(`(${number})`, 6, heldWords(says, units)),
          ...choices.flatMap((choice) => beside('', 8, choice)),
          '',
        ]),
      ]

/** What each blank is worth, and room for what the part came to. */
const footer = ({ blanks, steps }: Worksheet): string[] => [
  '',
  '='.repeat(COLUMNS),
  ...wrap(`Marks: ${blanks.map(({ number, outOf }) => `(${number})\u00a0___/${outOf}`).join('  ')}`, COLUMNS),
  ...(steps.length === 0
    ? []
    : ['', `Size ${'_'.repeat(14)}  Finish ${'_'.repeat(12)}  Burr ${'_'.repeat(10)}  pass / fail ______`]),
]
