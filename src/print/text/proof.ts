import { number, words } from '../../phrase/words.ts'
import type { ProofLine, SheetFeature } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, wrap } from './columns.ts'

type Planned = Extract<SheetFeature, { status: 'planned' }>
type Row = readonly [label: string, planned: string, worst: string, rss: string, limits: string, cause: string]

const HEADINGS: Row = ['', 'planned', 'worst low to high', 'rss ±', 'limits', 'cause']

/**
 * A table per feature: planned, worst low to high, root sum square, limits, and the number of the largest cause; under
 * a size with limits its verdict. `like`: a feature that is proved alike; only what differs from it is told.
 */
export const proofLines = (
  feature: Planned,
  units: Units,
  causes: Causes,
  width: number = COLUMNS,
  like?: Planned,
): string[] => {
  const known = new Set(like?.proof.lines.map((line) => JSON.stringify(told(line, units, causes))))
  const lines = feature.proof.lines.filter(
    (line) => !line.settled && !known.has(JSON.stringify(told(line, units, causes))),
  )
  const rows = lines.map((line) => row(line, units, causes))
  const widths = HEADINGS.map((_, i) => Math.max(...[HEADINGS, ...rows].map((each) => (each[i] ?? '').length)))
  const fits = widths.reduce((sum, each) => sum + each + 2, -1) <= width
  return [
    ...wrap(
      `${feature.name.toUpperCase()}: ${like === undefined ? words(feature.proof.replayed, units) : `as "${like.name}", but`}`,
      width,
    ),
    ...(fits && rows.length > 0 ? [columns(HEADINGS, widths)] : []),
    ...lines.flatMap((line, i) => [
      ...(fits ? [columns(rows[i] ?? HEADINGS, widths)] : stacked(rows[i] ?? HEADINGS, width)),
      ...under(line, units, width),
    ]),
  ]
}

/** The largest causes, each with the number by which the tables name it. */
export type Causes = ReadonlyMap<string, number>

export const causesOf = (features: readonly SheetFeature[]): Causes => {
  const named = features.flatMap((feature) =>
    feature.status === 'planned'
      ? feature.proof.lines.flatMap(({ settled, worstCause }) => (settled || worstCause === null ? [] : [worstCause]))
      : [],
  )
  return new Map([...new Set(named)].map((cause, i) => [cause, i + 1]))
}

export const causeLines = (causes: Causes, width: number): string[] =>
  causes.size === 0
    ? []
    : wrap(
        `largest cause: ${[...causes].map(([cause, n]) => `${n}\u00a0${cause.replaceAll(' ', '\u00a0')}`).join('; ')}`,
        width,
      )

const told = (line: ProofLine, units: Units, causes: Causes): readonly string[] => [
  ...row(line, units, causes),
  verdict(line, units),
]

const row = (line: ProofLine, units: Units, causes: Causes): Row => [
  line.label,
  number(line.planned, units),
  `${number(line.low, units)} to ${number(line.high, units)}`,
  number(line.rss, units),
  line.limits === null ? 'none given' : `${number(line.limits[0], units)} to ${number(line.limits[1], units)}`,
  line.worstCause === null ? '' : `${causes.get(line.worstCause)}`,
]

/** Labels to the left, numbers to the right, so that the decimal points are near each other. */
const columns = (cells: Row, widths: readonly number[]): string =>
  ` ${cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  ')}`

/** On a narrow page a size is a few lines. */
const stacked = ([label, planned, worst, rss, limits, cause]: Row, width: number): string[] => [
  ` ${label} ${planned}${cause === '' ? '' : `, cause ${cause}`}`,
  ...beside('', 4, `worst ${worst}, rss ±${rss}`, width),
  ...beside('', 4, `limits ${limits}`, width),
]

const under = (line: ProofLine, units: Units, width: number): string[] => {
  const remedy = line.remedy === null ? [] : beside('', 4, words(line.remedy, units), width)
  const comment = verdict(line, units)
  return [...(comment === '' ? [] : beside('', 4, comment, width)), ...remedy]
}

/** Measured at the stop, where the sheet corrects by it: the verdict is of that. */
const verdict = ({ measured, spare, verdict }: ProofLine, units: Units): string => {
  const at = measured === null ? [] : [`at the stop ${number(measured.low, units)} to ${number(measured.high, units)}`]
  const told =
    spare === null
      ? []
      : verdict === 'holds'
        ? [`in tolerance, worst case, ${number(spare, units)} to spare`]
        : [`MAY MISS TOLERANCE, ${number(spare, units)} beyond a limit`]
  return [...at, ...told].join(': ')
}

/** What the two ranges of a size are, where any has two. */
export const stopLegend = (features: readonly SheetFeature[], width: number): string[] =>
  features.some((one) => one.status === 'planned' && one.proof.lines.some(({ measured }) => measured !== null))
    ? wrap(
        'worst low to high: cut without measuring; "at the stop": measured there and corrected by the tables, which the verdict counts',
        width,
      )
    : []
