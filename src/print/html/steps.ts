import type { Phrase } from '../../phrase/phrase.ts'
import { words } from '../../phrase/words.ts'
import type { Group, Sheet, SheetStep, StopTable } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { type Child, type Markup, tag } from '../markup.ts'
import { told } from './phrases.ts'

/** One line to tick: a step, or all the steps at one place of a form that is stepped along. */
type Entry = {
  readonly from: number
  readonly to: number
  readonly group: Group
  readonly thing: string
  readonly does: Phrase
  readonly effect: Phrase
  readonly more: readonly Phrase[]
  readonly tables?: readonly StopTable[]
}

/** What stands beside a step: its readings on their faces, and its picture. */
export type Beside = { readonly dials: ReadonlyMap<number, Markup>; readonly pictures: ReadonlyMap<number, Markup> }

/** The steps of a feature under small headings, each with a box. */
export const stepList = (sheet: Sheet, feature: number, beside: Beside): Markup[] => {
  const entries = entriesOf(sheet, feature)
  return entries.map((entry, i) => {
    const heading = entry.group === entries[i - 1]?.group ? [] : [tag('h3', {}, entry.group)]
    return tag(
      'div',
      { class: heading.length > 0 ? 'begins' : undefined },
      ...heading,
      ...boxesAt(sheet, entry),
      item(entry, sheet.units, beside),
    )
  })
}

/** What stands before a step for learners: boxes to tick, and a blank for the initials of the instructor. */
const boxesAt = ({ supervised = [], units }: Sheet, { from, to }: Entry): Markup[] =>
  supervised
    .filter(({ before }) => from <= before && before <= to)
    .map(({ kind, before, says }) =>
      tag(
        'p',
        { class: 'note supervised' },
        tag('strong', {}, kind === 'dry-run' ? 'Dry run, ' : 'Instructor '),
        ...(kind === 'dry-run'
          ? []
          : [
              tag('input', {
                class: 'blank',
                type: 'text',
                autocomplete: 'off',
                'data-blank': `${kind}.${before}`,
                'aria-label': `initials of the instructor, ${words(says, units)}`,
              }),
              ' ',
            ]),
        told(says, units),
      ),
    )

const entriesOf = (sheet: Sheet, feature: number): Entry[] => {
  const { steps, places = [] } = sheet
  const own = steps.filter((step) => step.feature === feature)
  return own.flatMap((step): Entry[] => {
    const place = places.find(({ from, to }) => from <= step.number && step.number <= to)
    if (place === undefined) {
      const { tables, ...rest } = step
      const entry = { ...rest, does: [...(step.first ?? []), ...step.does], from: step.number, to: step.number }
      // Who fills a sheet in gets the lines: their blanks are numbered.
      return [tables === undefined || sheet.identity === null ? entry : { ...entry, tables }]
    }
    if (place.from !== step.number) return []
    const within = own.filter(({ number }) => number >= place.from && number <= place.to)
    return [{ ...place, group: step.group, more: within.flatMap((one: SheetStep) => one.more) }]
  })
}

const item = (entry: Entry, units: Units, { dials, pictures }: Beside): Markup => {
  const { from, to, thing, does, effect, more } = entry
  const number = from === to ? String(from) : `${from}-${to}`
  const within = (all: ReadonlyMap<number, Markup>): Markup[] =>
    [...all].filter(([step]) => from <= step && step <= to).map(([, what]) => what)
  const faces = within(dials)
  return tag(
    'section',
    { class: 'step', id: `step-${from}` },
    tag(
      'label',
      {},
      tag('input', { type: 'checkbox', 'data-step': from, 'aria-label': `step ${number} done` }),
      tag('span', { class: 'number' }, number),
      tag('span', { class: 'thing' }, thing),
      tag(
        'span',
        { class: 'does' },
        told(does, units),
        effect.length === 0 ? [] : [' ', tag('span', { class: 'effect' }, told(effect, units))],
      ),
    ),
    more.length === 0 ? [] : tag('ul', { class: 'more' }, ...moreOf(entry, units)),
    faces.length === 0 ? [] : tag('div', { class: 'dials' }, ...faces),
    within(pictures),
  )
}

/** Each line an item; the lines of a table are one, with what was measured over the reading that follows from it. */
const moreOf = ({ from, more, tables = [] }: Entry, units: Units): Markup[] =>
  more.flatMap((each, i) => {
    const table = tables.find(({ lines }) => i >= lines.from && i < lines.from + lines.count)
    if (table === undefined) return [tag('li', {}, told(each, units), blank(each, from, i, units))]
    return i === table.lines.from ? [tag('li', {}, ...tableOf(table, units))] : []
  })

const tableOf = ({ head, rows, rules }: StopTable, units: Units): Child[] => [
  told(head, units),
  tag(
    'dl',
    { class: 'rows' },
    ...rows.map(({ keys, reading }) =>
      tag('div', {}, tag('dt', {}, told(keys, units)), tag('dd', {}, told(reading, units))),
    ),
  ),
  ...rules.map((rule) => tag('div', {}, told(rule, units))),
]

/** Where a size is to be measured there is room to write it. */
const blank = (phrase: Phrase, step: number, i: number, units: Units): Child => {
  if (phrase.at(-1) !== ' expected') return []
  return [
    ' ',
    tag('input', {
      class: 'blank',
      type: 'text',
      inputmode: 'decimal',
      autocomplete: 'off',
      'data-blank': `${step}.${i}`,
      'aria-label': `measured: ${words(phrase, units)}`,
    }),
  ]
}
