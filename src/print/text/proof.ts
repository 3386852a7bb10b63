import type { Figure } from '../../phrase/phrase.ts'
import { number, words } from '../../phrase/words.ts'
import type { ProofLine, SheetFeature } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS, wrap } from './columns.ts'

type Planned = Extract<SheetFeature, { status: 'planned' }>
type Row = readonly [
  label: string,
  planned: string,
  unmeasured: string,
  atStop: string,
  limits: string,
  spare: string,
  cause: string,
]

const HEADINGS: Row = ['', 'planned', 'unmeasured', 'at the stop', 'limits', 'spare', '*']

/** What was replayed: told once if it is the same for every feature. */
export const replayedLines = (features: readonly Planned[], units: Units, width: number): string[] =>
  sameReplay(features, units) ? wrap(words(features[0]!.proof.replayed, units), width) : []

const sameReplay = (features: readonly Planned[], units: Units): boolean =>
  new Set(features.map(({ proof }) => words(proof.replayed, units))).size === 1

/**
 * The verdict of a feature and a table: planned, the worst case without and with measuring at the stop, limits, what is to spare, and the letter of the
 * largest cause. `like`: a feature that is proved alike; only what differs from it is told.
 */
export const proofLines = (
  feature: Planned,
  all: readonly Planned[],
  units: Units,
  causes: Causes,
  width: number = COLUMNS,
  like?: Planned,
): string[] => {
  const known = new Set(like?.proof.lines.map((line) => JSON.stringify(row(line, units, causes))))
  const lines = feature.proof.lines.filter(
    (line) => !line.settled && !known.has(JSON.stringify(row(line, units, causes))),
  )
  const rows = lines.map((line) => row(line, units, causes))
  const fitting = fittingRows(rows, width)
  const widths = widthsOf(fitting)
  return [
    ...wrap(
      `${feature.name.toUpperCase()}: ${verdictOf(feature)}${like === undefined ? '' : `; as "${like.name}", but`}`,
      width,
    ),
    ...(sameReplay(all, units) ? [] : wrap(words(feature.proof.replayed, units), width)),
    ...(fitting.length > 0 ? [headings(widths)] : []),
    ...lines.flatMap((line, i) => [
      ...(fitting.includes(rows[i]!) ? [columns(rows[i]!, widths)] : stacked(rows[i]!, width)),
      ...under(line, units, width),
    ]),
  ]
}

/** Of every size with limits, the worst case counted. */
const verdictOf = ({ proof }: Planned): string => {
  const limited = proof.lines.filter(({ limits }) => limits !== null)
  const missed = limited.filter(({ verdict }) => verdict !== 'holds')
  if (limited.length === 0) return 'no limits given'
  return missed.length === 0
    ? 'in tolerance, worst case'
    : `MAY MISS TOLERANCE: ${missed.map(({ label }) => label).join(', ')}`
}

/** A heading of the first numbers has the room of the labels. */
const widthsOf = (rows: readonly Row[]): number[] =>
  HEADINGS.map((heading, i) => Math.max(i < 2 ? 0 : heading.length, ...rows.map((each) => each[i]!.length)))

const wide = (rows: readonly Row[]): number => widthsOf(rows).reduce((sum, each, i) => sum + each + (GAPS[i] ?? 0), 1)

/** The rows that have room beside each other: those that take the most room are left out until the others do. */
const fittingRows = (rows: readonly Row[], width: number): readonly Row[] => {
  if (rows.length === 0 || wide(rows) <= width) return rows
  const fewer = rows.map((cells) => rows.filter((other) => other !== cells))
  return fittingRows(fewer.toSorted((a, b) => wide(a) - wide(b))[0]!, width)
}

/** Blanks behind each column. */
const GAPS = [1, 2, 2, 2, 2, 1]

/** The largest causes, each with the letter by which the tables name it. */
export type Causes = ReadonlyMap<string, string>

export const causesOf = (features: readonly SheetFeature[]): Causes => {
  const named = features.flatMap((feature) =>
    feature.status === 'planned'
      ? feature.proof.lines.flatMap(({ settled, worstCause }) => (settled || worstCause === null ? [] : [worstCause]))
      : [],
  )
  return new Map([...new Set(named)].map((cause, i) => [cause, String.fromCharCode('a'.charCodeAt(0) + i)]))
}

const row = (
  { label, planned, low, high, limits, measured, spare, verdict, worstCause }: ProofLine,
  units: Units,
  causes: Causes,
): Row => [
  label,
  number(planned, units),
  range(low, high, units),
  measured === null ? '' : range(measured.low, measured.high, units),
  limits === null ? 'none' : range(...limits, units),
  spare === null ? '' : `${verdict === 'holds' ? '' : '-'}${number(spare, units)}`,
  worstCause === null ? '' : `${causes.get(worstCause)}`,
]

const range = (low: Figure, high: Figure, units: Units): string => {
  const [from, to] = [number(low, units), number(high, units)]
  return `${from}${from.startsWith('-') || to.startsWith('-') ? ' to ' : '-'}${to}`
}

/** Labels to the left, numbers to the right, so that the decimal points are near each other. */
const columns = (cells: Row, widths: readonly number[]): string =>
  ` ${cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)) + ' '.repeat(GAPS[i] ?? 0)).join('')}`

const headings = ([label = 0, planned = 0, ...others]: readonly number[]): string => {
  const [, second, ...rest] = HEADINGS
  return `${second.padStart(label + planned + 2)}${rest.map((cell, i) => ' '.repeat(GAPS[i + 1] ?? 0) + cell.padStart(others[i] ?? 0)).join('')}`
}

/** What has no room in the table, and every size on a narrow page. */
const stacked = ([label, planned, unmeasured, atStop, limits, spare, cause]: Row, width: number): string[] => {
  const says = [
    `${label}\u00a0${planned}`,
    `${HEADINGS[2]}\u00a0${unmeasured.replaceAll(' ', '\u00a0')}`,
    ...(atStop === '' ? [] : [`${HEADINGS[3].replaceAll(' ', '\u00a0')}\u00a0${atStop.replaceAll(' ', '\u00a0')}`]),
    `${HEADINGS[4]}\u00a0${limits.replaceAll(' ', '\u00a0')}`,
    ...(spare === '' ? [] : [`${HEADINGS[5]}\u00a0${spare.replaceAll(' ', '\u00a0')}`]),
    ...(cause === '' ? [] : [`cause\u00a0${cause}`]),
  ]
  return wrap(says.join(', '), width - 4).map((line, i) => `${i === 0 ? ' ' : '    '}${line}`)
}

const under = (line: ProofLine, units: Units, width: number): string[] => [
  ...(line.spare === null || line.verdict === 'holds'
    ? []
    : beside('', 4, `MAY MISS TOLERANCE, ${number(line.spare, units)} beyond a limit`, width)),
  ...(line.remedy === null ? [] : beside('', 4, words(line.remedy, units), width)),
]

/** What the columns are, and the letters of the causes. */
export const proofLegend = (features: readonly Planned[], causes: Causes, width: number): string[] => {
  const lines = features.flatMap(({ proof }) => proof.lines)
  const stops = lines.some(({ measured }) => measured !== null)
  const named = [...causes].map(([cause, letter]) => `${letter}\u00a0${cause.replaceAll(' ', '\u00a0')}`)
  const says = [
    `unmeasured: the worst case${stops ? ' without measuring' : ''}`,
    ...(stops ? ['at the stop: measured and corrected there, which the verdict counts'] : []),
    ...(lines.some(({ spare }) => spare !== null) ? ['spare: to the nearer limit'] : []),
    ...(named.length === 0 ? [] : [`*\u00a0largest\u00a0cause: ${named.join(', ')}`]),
  ]
  return wrap(says.join('; '), width)
}
