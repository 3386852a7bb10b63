import type { Between } from '../../finish/between.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import type { Length } from '../../units/length.ts'

/** What the two tables under a stop have in common. */
type Row = { readonly measured: Length }
type Table = {
  readonly rows: readonly Row[]
  readonly without: readonly (readonly Length[])[]
  readonly reason: string | null
}

export const noTable = (of: string, reason: string | null): Phrase => [
  `BY ${of}: no table here${reason === null ? '' : `, ${reason}`}; with what you measure use "finish"`,
]

/** Readings between the rows for which no row can be given. */
const withoutRow = ({ without, reason }: Table, key: (measured: Length) => Figure): Phrase[] =>
  without.map((readings) => [
    key(readings[0]!),
    ...(readings.length === 1 ? [] : [' to ', key(readings.at(-1)!)]),
    `: no row, ${reason}; use "finish"`,
  ])

/** True if no reading without a row is between them. */
export const neighbors = ({ without }: Table, one: Row, next: Row): boolean =>
  !without.flat().some((reading) => reading < one.measured && reading > next.measured)

/**
 * True if an instrument reads more finely than the distance of the rows, and readings between two rows are finished
 * differently on either side.
 */
export const gapsBetween = (groups: readonly (readonly Row[])[], quantum: Length): boolean =>
  groups.slice(1).some((rows, i) => further(groups[i]!.at(-1)!, rows[0]!, quantum))

/** What to do between two rows and beyond the last. `doubt`: null if no reading falls between two rows. */
export const tableRules = (
  table: Table & { readonly between: Between },
  doubt: string | null,
  most: Figure,
  key: (measured: Length) => Figure,
): Phrase[] => [
  ...withoutRow(table, key),
  [...betweenRows(table.between, doubt), 'over ', most, ' off: STOP, measure again'],
]

/** The same in a few words, for who knows them. */
export const shortRules = (...[table, doubt, most, key]: Parameters<typeof tableRules>): Phrase[] => [
  ...withoutRow(table, key),
  ...(doubt === null ? [] : [[BETWEEN[table.between](doubt)]]),
  ['over ', most, ' off: measure again'],
]

const betweenRows = (between: Between, doubt: string | null): string[] =>
  doubt === null ? [] : [`${BETWEEN[between](doubt)}; `]

const BETWEEN: Readonly<Record<Between, (doubt: string) => string>> = {
  nearer: (doubt) => `nearer row, in doubt finish ${doubt}`,
  'in proportion': (doubt) => `between rows in proportion, in doubt finish ${doubt}`,
  none: () => 'between rows use "finish"',
}

/** The separator between two keys with one reading. */
export const joined = (rows: readonly Row[], quantum: Length): string =>
  rows.length > 2 || further(rows[0]!, rows[1]!, quantum) ? ' to ' : ', '

const further = (one: Row, next: Row, quantum: Length): boolean =>
  Math.abs(one.measured - next.measured) > quantum * (1 + 1e-6)
