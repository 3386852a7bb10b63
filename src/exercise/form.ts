import type { Worksheet } from './worksheet.ts'

/** The form that a learner, or who types it in, fills with answers. A value stands in quotes or without them. */
export const answerForm = ({ sheet, learner, title, blanks }: Worksheet, set?: string): string =>
  [
    `# ${oneLine(title)}: write each answer after value, as on paper: 125, .125, 1 turn 25, 1/8`,
    `sheet: ${JSON.stringify(sheet)}`,
    ...(set === undefined ? [] : [`set: ${JSON.stringify(set)}`]),
    `learner: ${learner === null ? '""' : JSON.stringify(learner)}`,
    'answers:',
    ...blanks.flatMap(({ id, number, asks }) => [
      `  # (${number}) ${oneLine(asks)}`,
      `  - id: ${JSON.stringify(id)}`,
      '    value: ""',
    ]),
    '',
  ].join('\n')

const oneLine = (text: string): string => text.replace(/\s+/g, ' ')
