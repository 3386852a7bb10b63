import type { Key, KeySheet } from '../../exercise/key.ts'
import { beside, COLUMNS, leftAndRight, nameText } from './columns.ts'

/** The key on paper: what is right, how far it may be off, and how it is worked out. */
export const keyText = ({ title, teaches, sheets }: Key): string => {
  const lines = [
    '='.repeat(COLUMNS),
    ...leftAndRight(title.toUpperCase(), 'KEY'),
    '='.repeat(COLUMNS),
    ...beside('Learn', 12, teaches),
    ...sheets.flatMap(keySheet),
  ]
  return `${lines.join('\n')}\n`
}

const keySheet = ({ sheet, learner, values, answers }: KeySheet): string[] => [
  '',
  `== sheet ${sheet}  ${nameText(learner ?? '', 60)}`.trimEnd(),
  ...Object.entries(values).flatMap(([path, value]) => beside('', 4, `${path}: ${value}`)),
  ...answers.flatMap(({ number, asks, key, within, working }) => [
    ...beside(`(${number})`, 6, `${key}   ${within}; ${asks}`),
    ...beside('', 10, working),
  ]),
]
