import { number, words } from '../../phrase/words.ts'
import type { ProofLine, SheetFeature } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, wrap } from './columns.ts'

type Row = readonly [label: string, planned: string, worst: string, rss: string, limits: string]

const HEADINGS: Row = ['', 'planned', 'worst low to high', 'rss ±', 'limits']

/**
 * A table per feature: planned, worst low to high, root sum square, limits; under each line the verdict, the margin,
 * and the cause.
 */
export const proofLines = (feature: Extract<SheetFeature, { status: 'planned' }>, units: Units): string[] => {
  const lines = feature.proof.lines.filter(({ settled }) => !settled)
  const rows = lines.map((line) => row(line, units))
  const widths = HEADINGS.map((_, i) => Math.max(...[HEADINGS, ...rows].map((each) => (each[i] ?? '').length)))
  return [
    ...wrap(feature.name.toUpperCase(), COLUMNS),
    ...wrap(`${words(feature.proof.replayed, units)}.`, COLUMNS - 1),
    ...(rows.length > 0 ? ['', columns(HEADINGS, widths)] : []),
    ...lines.flatMap((line, i) => [columns(rows[i] ?? HEADINGS, widths), ...under(line, units)]),
  ]
}

const row = (line: ProofLine, units: Units): Row => [
  line.label,
  number(line.planned, units),
  `${number(line.low, units)} to ${number(line.high, units)}`,
  number(line.rss, units),
  line.limits === null ? 'none given' : `${number(line.limits[0], units)} to ${number(line.limits[1], units)}`,
]

/** Labels to the left, numbers to the right, so that the decimal points are near each other. */
const columns = (cells: Row, widths: readonly number[]): string =>
  ` ${cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  ')}`.slice(
    0,
    COLUMNS,
  )

const under = (line: ProofLine, units: Units): string[] => {
  const remedy = line.remedy === null ? [] : beside('', 4, words(line.remedy, units))
  const cause = line.worstCause === null ? '' : `largest cause: ${line.worstCause}`
  const comment = [verdict(line, units), cause].filter(Boolean).join('; ')
  return [...(comment === '' ? [] : beside('', 4, comment)), ...remedy]
}

const verdict = (line: ProofLine, units: Units): string => {
  if (line.spare === null) return ''
  const spare = number(line.spare, units)
  return line.verdict === 'holds'
    ? `in tolerance, worst case, ${spare} to spare`
    : `MAY MISS TOLERANCE, ${spare} beyond a limit`
}
