import { words } from '../../phrase/words.ts'
import type { Sheet, SlipCard } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, ruled, wrap } from './columns.ts'

const MISTAKE = 6

/** One line for what is measured, and under it the mistake that measures so. */
export const slipLines = ({ slips, units }: Sheet, width: number = COLUMNS): string[] => {
  if (slips === undefined || slips.length === 0) return []
  return [
    '',
    ...ruled('COMMON MISTAKES', '', width),
    ...wrap('What common mistakes on this job would measure, against the sizes expected. Each was replayed.', width),
    ...slips.flatMap((card) => [
      '',
      ...wrap(card.name.toUpperCase(), width),
      ...cardLines(card, units, width),
      ...signLines(card, units, width),
    ]),
  ]
}

const cardLines = ({ lines }: SlipCard, units: Units, width: number): string[] =>
  lines.length === 0
    ? beside(' ', 1, 'No single mistake of those that are looked for would show.', width)
    : lines.flatMap(({ shows, mistake }) => [
        ...beside(' ', 1, words(shows, units), width),
        ...beside('', MISTAKE, mistake, width),
      ])

const signLines = ({ signs }: SlipCard, units: Units, width: number): string[] => [
  ...beside(' ', 1, 'Signs of what cannot be replayed:', width),
  ...signs.flatMap((sign) => beside('', MISTAKE, words(sign, units), width)),
]
