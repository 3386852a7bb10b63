import { words } from '../../phrase/words.ts'
import type { Sheet, SlipCard } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, wrap } from './columns.ts'

const MISTAKE = 6

/** One line for what is measured, and under it the mistake that measures so. */
export const slipLines = ({ slips, units }: Sheet): string[] => {
  if (slips === undefined || slips.length === 0) return []
  return [
    '',
    '='.repeat(COLUMNS),
    'COMMON MISTAKES',
    '='.repeat(COLUMNS),
    ...wrap('What common mistakes on this job would measure, against the sizes expected. Each was replayed.', COLUMNS),
    ...slips.flatMap((card) => ['', ...wrap(card.name.toUpperCase(), COLUMNS), ...cardLines(card, units)]),
  ]
}

const cardLines = ({ lines }: SlipCard, units: Units): string[] =>
  lines.length === 0
    ? [' No single mistake of those that are looked for would show.']
    : lines.flatMap(({ shows, mistake }) => [...beside(' ', 1, words(shows, units)), ...beside('', MISTAKE, mistake)])
