import type { Phrase, Role } from '../../phrase/phrase.ts'
import { number } from '../../phrase/words.ts'
import type { Units } from '../../units/length.ts'
import { type Child, type Markup, tag } from '../markup.ts'

/** What a hand sets or counts on a dial: it is read from a step away. */
const READINGS: ReadonlySet<Role> = new Set<Role>(['mark', 'turns', 'reading', 'take-up'])

/** A phrase as it stands in the page, its readings large. */
export const told = (phrase: Phrase, units: Units): Child[] =>
  phrase.map((part) => {
    if (typeof part === 'string') return part
    const text = number(part, units)
    return READINGS.has(part.role) ? tag('b', { class: 'reading' }, text) : text
  })

/** With a period, where nothing ends it yet. */
export const sentence = (text: string): string => (/[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`)

/** Labels with what they say beside them. */
export const facts = (rows: readonly (readonly [label: string, says: readonly Child[]])[]): Markup[] =>
  rows.length === 0
    ? []
    : [
        tag(
          'dl',
          { class: 'facts' },
          ...rows.map(([label, says]) =>
            tag('div', {}, tag('dt', {}, label), ...says.map((each) => tag('dd', {}, each))),
          ),
        ),
      ]

export const cells = (name: 'td' | 'th', texts: readonly Child[]): Markup[] => texts.map((each) => tag(name, {}, each))

export const table = (heads: readonly string[], rows: readonly Markup[]): Markup =>
  tag(
    'div',
    { class: 'wide' },
    tag('table', {}, tag('thead', {}, tag('tr', {}, ...cells('th', heads))), tag('tbody', {}, ...rows)),
  )
