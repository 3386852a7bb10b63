import { number, words } from '../../phrase/words.ts'
import type { InspectionLine, Sheet } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, wrap } from './columns.ts'

const BLANK = '_________'
const VERDICT = '____'

/** A table to fill in at the bench: label, planned, limits and two blanks; under each line the instrument for it. */
export const inspectionLines = (sheet: Sheet): string[] => {
  const cut = sheet.features.flatMap((feature) => (feature.status === 'planned' ? [feature] : []))
  if (cut.length === 0) return []
  return [
    '',
    '='.repeat(COLUMNS),
    'INSPECTION',
    '='.repeat(COLUMNS),
    'Clean, deburred and cool.   Measured by ____________________   on ____________',
    ...cut.flatMap((feature) => [
      '',
      ...wrap(feature.name.toUpperCase(), COLUMNS),
      cells('', 'planned', 'limits', 'measured', 'ok?'),
      ...feature.inspection.flatMap((line) => lines(line, sheet.units)),
    ]),
  ]
}

const lines = (line: InspectionLine, units: Units): string[] => [
  cells(
    line.label,
    line.pair === null ? number(line.planned, units) : '',
    line.limits === null ? 'none given' : `${number(line.limits[0], units)} to ${number(line.limits[1], units)}`,
    BLANK,
    VERDICT,
  ),
  ...beside('', 4, words(line.using, units)),
]

const cells = (label: string, planned: string, limits: string, measured: string, verdict: string): string =>
  ` ${label.slice(0, 26).padEnd(26)} ${planned.padStart(9)}  ${limits.padStart(20)}  ${measured.padEnd(9)}  ${verdict}`.trimEnd()
