import { number, words } from '../../phrase/words.ts'
import type { InspectionLine, Sheet } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, ruled, wrap } from './columns.ts'

const BLANK = '_________'
const VERDICT = '____'

/** A table to fill in at the bench: label, planned, limits and two blanks; under each line the instrument for it. */
export const inspectionLines = (sheet: Sheet, width: number = COLUMNS): string[] => {
  const cut = sheet.features.flatMap((feature) =>
    feature.status === 'planned' && feature.inspection.length > 0 ? [feature] : [],
  )
  if (cut.length === 0) return []
  return [
    '',
    ...ruled('INSPECTION', '', width),
    ...beside('', 0, 'Clean, deburred and cool.  Measured by ____________________  on ____________', width),
    ...wrap(DECISIONS[sheet.decision], width),
    ...cut.flatMap((feature) => [
      '',
      ...wrap(feature.name.toUpperCase(), width),
      ...(width < COLUMNS ? [] : [cells('', 'planned', 'limits', 'measured', 'ok?')]),
      ...feature.inspection.flatMap((line) => lines(line, sheet.units, width)),
    ]),
  ]
}

/** What is accepted, told once. */
export const DECISIONS: Readonly<Record<Sheet['decision'], string>> = {
  prove: 'Accepted is what is proved (ISO 14253-1): inside the limits by all that the instrument may be off.',
  simple: 'Accepted is what reads inside the limits (simple acceptance).',
}

const lines = (line: InspectionLine, units: Units, width: number): string[] => {
  const planned = line.pair === null ? number(line.planned, units) : ''
  const limits =
    line.limits === null ? 'none given' : `${number(line.limits[0], units)} to ${number(line.limits[1], units)}`
  return [
    ...(width < COLUMNS
      ? [
          ...beside(' ', 1, [line.label, planned].filter(Boolean).join(' '), width),
          ...beside('', 4, `limits ${limits}`, width),
          ...(line.asked ? beside('', 4, `measured ${BLANK} ok? ${VERDICT}`, width) : []),
        ]
      : [cells(line.label, planned, limits, line.asked ? BLANK : '', line.asked ? VERDICT : '')]),
    ...beside('', 4, words(line.using, units), width),
    ...(line.decision === null ? [] : beside('', 4, words(line.decision.says, units), width)),
  ]
}

const cells = (label: string, planned: string, limits: string, measured: string, verdict: string): string =>
  ` ${label.slice(0, 26).padEnd(26)} ${planned.padStart(9)}  ${limits.padStart(20)}  ${measured.padEnd(9)}  ${verdict}`.trimEnd()
