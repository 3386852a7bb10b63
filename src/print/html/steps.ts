import type { Phrase } from '../../phrase/phrase.ts'
import { words } from '../../phrase/words.ts'
import type { Group, Sheet, SheetStep } from '../../sheet/sheet.ts'
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
}

/** The steps of a feature under small headings, each with a box. `pictured`: steps that have a picture in the page. */
export const stepList = (sheet: Sheet, feature: number, pictured: ReadonlyMap<number, string>): Markup[] => {
  const entries = entriesOf(sheet, feature)
  return entries.map((entry, i) => {
    const heading = entry.group === entries[i - 1]?.group ? [] : [tag('h3', {}, entry.group)]
    return tag(
      'div',
      { class: heading.length > 0 ? 'begins' : undefined },
      ...heading,
      item(entry, sheet.units, pictured),
    )
  })
}

const entriesOf = ({ steps, places = [] }: Sheet, feature: number): Entry[] => {
  const own = steps.filter((step) => step.feature === feature)
  return own.flatMap((step): Entry[] => {
    const place = places.find(({ from, to }) => from <= step.number && step.number <= to)
    if (place === undefined) return [{ ...step, from: step.number, to: step.number }]
    if (place.from !== step.number) return []
    const within = own.filter(({ number }) => number >= place.from && number <= place.to)
    return [{ ...place, group: step.group, more: within.flatMap((one: SheetStep) => one.more) }]
  })
}

const item = (entry: Entry, units: Units, pictured: ReadonlyMap<number, string>): Markup => {
  const { from, to, thing, does, effect, more } = entry
  const number = from === to ? String(from) : `${from}-${to}`
  const shown = [...pictured].filter(([step]) => from <= step && step <= to).map(([, id]) => id)
  return tag(
    'section',
    { class: 'step', id: `step-${from}`, 'data-picture': shown.length === 0 ? undefined : shown.join(' ') },
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
    more.length === 0
      ? []
      : tag(
          'ul',
          { class: 'more' },
          ...more.map((each, i) => tag('li', {}, told(each, units), blank(each, from, i, units))),
        ),
    shown.length === 0 ? [] : tag('p', { class: 'see' }, ...shown.map((id) => tag('a', { href: `#${id}` }, 'picture'))),
  )
}

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
