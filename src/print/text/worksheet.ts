import type { OpenFeature, Worksheet } from '../../exercise/worksheet.ts'
import { heldWords, words } from '../../phrase/words.ts'
import { beside, COLUMNS, leftAndRight, plain, wrap } from './columns.ts'
import { LABEL } from './front.ts'
import { stepLines } from './steps.ts'

/** A learner's sheet on paper. */
export const worksheetText = (sheet: Worksheet): string => {
  const lines = [
    '='.repeat(COLUMNS),
    ...leftAndRight(sheet.title.toUpperCase(), `sheet ${sheet.sheet}`),
    '='.repeat(COLUMNS),
    ...leftAndRight(
      sheet.learner === null ? `Name ${'_'.repeat(34)}` : `Name  ${sheet.learner}`,
      `Date ${'_'.repeat(14)}  Marks ____ of ${sheet.outOf}`,
    ),
    ...beside('Learn', LABEL, sheet.teaches),
    ...beside('Job', LABEL, sheet.job),
    ...facts(sheet, sheet.heading),
    '',
    ...beside(' !', 3, sheet.cautions.join(' ')),
    ...sheet.features.flatMap((feature) => featureLines(sheet, feature)),
    ...questions(sheet),
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
  ...stepLines(
    sheet.steps.filter((step) => step.feature === feature.index),
    sheet.units,
  ),
]

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
  ...wrap(`Marks: ${blanks.map(({ number, outOf }) => `(${number}) ___/${outOf}`).join('  ')}`, COLUMNS),
  ...(steps.length === 0
    ? []
    : ['', `Size ${'_'.repeat(14)}  Finish ${'_'.repeat(12)}  Burr ${'_'.repeat(10)}  pass / fail ______`]),
]
