import { heldWords } from '../../../phrase/words.ts'
import type { Block, CellPart } from '../../../sheet/card/types.ts'
import type { Units } from '../../../units/length.ts'
import { beside } from '../columns.ts'
import { flowed } from './boxes.ts'

type Cuts = Extract<Block, { kind: 'cuts' }>
type Parts = readonly CellPart[]
/** A column as it is printed: what all its cells begin with is printed once, in its head. */
type Printed = { readonly head: readonly string[]; readonly cells: readonly string[] }

const GAP = 2
/** More rows than this stand beside each other, if they are short enough. */
const MANY = 8

/** A row a cut and a column a dial; where that is too wide, columns that never change once above; then row by row. */
export const cutLines = ({ columns, rows }: Cuts, units: Units, width: number, tight: boolean): string[] => {
  const printed = columns.map((column, i) =>
    printedColumn(
      column,
      rows.map(({ cells }) => cells[i] ?? []),
      units,
    ),
  )
  const labels = rows.map(({ from, to }) => `${from === to ? from : `${from}-${to}`}`)
  const label = Math.max(3, ...labels.map((text) => text.length))
  const boxed = labels.map((text) => `${text.padStart(label)} [ ]`)
  if (tight && rows.length === 1) return stacked(boxed, printed, width)
  const [same, varied] = parted(printed)
  const whole = rows.length > MANY && same.length > 0 ? undefined : headed(boxed, printed, width)
  if (whole !== undefined) return table(boxed, whole)
  // What differs may come first: it is told there, so that nobody goes in before the tool is over.
  const leads = printed.indexOf(varied[0]!) < printed.indexOf(same[0]!)
  const each = leads ? `at each ${varied[0]!.head[0]} below` : 'each'
  const always = same.flatMap(({ head, cells }) => beside('', 4, `${each}: ${joined([...head, cells[0]])}`, width))
  const rest = varied.length === 0 ? undefined : headed(boxed, varied, width)
  if (rest !== undefined) return [...always, ...table(boxed, rest, width)]
  return stacked(boxed, printed, width)
}

const printedColumn = (
  { thing, way, places }: Cuts['columns'][number],
  cells: readonly Parts[],
  units: Units,
): Printed => {
  const firsts = cells.flatMap(([first]) => (first === undefined ? [] : [first]))
  const slowly = firsts.every((part) => part.slowly)
  const leads = firsts.map(({ passing }) => heldWords(passing, units))
  const lead = leads.every((one) => one === leads[0]) ? (leads[0] ?? '') : ''
  const text = (part: CellPart, i: number): string => {
    const passing = heldWords(part.passing, units)
    const own = i === 0 && passing === lead ? '' : passing
    return [...(part.slowly && !slowly ? ['at the feed'] : []), own, atOf(part, units)].filter(Boolean).join(' ')
  }
  return {
    head: [thing, [...(slowly ? ['at the feed'] : []), way].filter(Boolean).join(' '), lead],
    cells: cells.map((parts) => parts.map(text).join(places ? ', then ' : ', ')),
  }
}

const atOf = ({ at, corrected }: CellPart, units: Units): string =>
  `${heldWords(at, units)}${corrected ? ' or ____' : ''}`

const parted = (columns: readonly Printed[]): readonly [Printed[], Printed[]] => {
  const same = columns.filter(
    ({ cells }) => cells.length > 1 && cells[0] !== '' && cells.every((one) => one === cells[0]),
  )
  return [same, columns.filter((one) => !same.includes(one))]
}

/** With heads on as few lines as the width allows; undefined if it does not allow it at all. */
const headed = (labels: readonly string[], columns: readonly Printed[], width: number): Printed[] | undefined =>
  HEADS.map((head) => columns.map((one) => ({ ...one, head: head(one.head) }))).find(
    (tried) => widthOf(labels, tried) <= width,
  )

const joined = (texts: readonly (string | undefined)[]): string => texts.filter(Boolean).join(' ')
const HEADS: readonly ((head: readonly string[]) => readonly string[])[] = [
  (head) => [joined(head), '', ''],
  ([thing, way, lead = '']) => [joined([thing, way]), lead, ''],
  (head) => head,
]

const breadth = ({ head, cells }: Printed): number => Math.max(...[...head, ...cells].map((each) => each.length))
const widthOf = (labels: readonly string[], columns: readonly Printed[]): number =>
  (labels[0]?.length ?? 0) + columns.reduce((sum, one) => sum + GAP + breadth(one), 0)

/** With `width`, as many rows beside each other as it holds. */
const table = (labels: readonly string[], columns: readonly Printed[], width = 0): string[] => {
  const line = (label: string, cells: readonly string[]): string =>
    label.padEnd(labels[0]!.length) +
    cells.map((cell, i) => ' '.repeat(GAP) + cell.padEnd(breadth(columns[i]!))).join('')
  const heads = [0, 1, 2]
    .filter((n) => columns.some(({ head }) => head[n] !== ''))
    .map((n) =>
      line(
        '',
        columns.map(({ head }) => head[n]!),
      ),
    )
  const rows = labels.map((label, i) =>
    line(
      label,
      columns.map(({ cells }) => cells[i]!),
    ),
  )
  const each = widthOf(labels, columns) + GAP
  const abreast = rows.length > MANY ? Math.max(1, Math.min(3, Math.floor((width + GAP) / each))) : 1
  const abeam = (texts: readonly string[]): string => texts.map((one) => one.padEnd(each)).join('')
  return [
    ...heads.map((head) => abeam(Array.from({ length: abreast }, () => head))),
    ...Array.from({ length: Math.ceil(rows.length / abreast) }, (_, i) =>
      abeam(rows.slice(i * abreast, (i + 1) * abreast)),
    ),
  ].map((one) => one.replaceAll('\u00a0', ' ').trimEnd())
}

const stacked = (labels: readonly string[], columns: readonly Printed[], width: number): string[] =>
  labels.flatMap((label, i) => {
    const says = columns.flatMap(({ head, cells }) => {
      const cell = cells[i] ?? ''
      return cell === '' ? [] : [joined([...head, cell])]
    })
    return flowed(says, width - label.length - 1).map(
      (say, n) => `${n === 0 ? label : ' '.repeat(label.length)} ${say}`,
    )
  })
