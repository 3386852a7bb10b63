import { words } from '../../phrase/words.ts'
import type { Sheet, SheetFeature } from '../../sheet/sheet.ts'
import { type Markup, tag } from '../markup.ts'
import type { Picture } from '../svg/picture.ts'
import { changedLines, isNothing } from '../text/changed.ts'
import { figure, warning } from './feature.ts'
import { cells, facts, sentence, table, told } from './phrases.ts'

/** Title block, what the part is and how it is held, what is cut with what, cautions, and the part in the machine. */
export const front = (sheet: Sheet, pictures: readonly Picture[]): Markup[] => [
  tag(
    'header',
    {},
    tag('h1', {}, sheet.title),
    tag(
      'p',
      { class: 'block' },
      ...[sheet.drawingNumber ?? '', nameOf(sheet)].filter((each) => each !== '').map((each) => tag('span', {}, each)),
    ),
  ),
  ...changes(sheet),
  ...pictures.filter(({ kind }) => kind === 'part').map(figure),
  ...facts(
    sheet.heading
      .filter(({ about }) => about !== 'sources')
      .map(({ label, says }) => [label, says.map((each) => told(each, sheet.units))]),
  ),
  ...overview(sheet),
  tag('ul', { class: 'cautions' }, ...sheet.cautions.map((each) => tag('li', {}, each))),
  ...(sheet.orderReasons.length === 0 ? [] : [tag('p', { class: 'note' }, sheet.orderReasons.map(sentence).join(' '))]),
  ...sheet.warnings.filter(({ feature }) => feature === null).map(({ say }) => warning(words(say, sheet.units))),
]

/** What to ask for where it matters which sheet was cut. */
export const nameOf = ({ identity, continues }: Sheet): string => {
  if (continues === undefined) return identity === null ? 'nothing is planned' : `sheet ${identity}`
  return identity === null ? 'goes on from another sheet' : `goes on from sheet ${identity}`
}

const overview = (sheet: Sheet): Markup[] => {
  const rows = sheet.features.map((feature) => tag('tr', {}, ...cells('td', row(sheet, feature))))
  return rows.length < 2 ? [] : [table(['cut', 'tool', 'steps'], rows)]
}

const row = (sheet: Sheet, feature: SheetFeature) => {
  const name = tag('a', { href: `#feature-${feature.index + 1}` }, `${feature.index + 1}  ${feature.name}`)
  if (feature.status === 'refused') return [name, 'REFUSED', '']
  const numbers = sheet.steps.filter((step) => step.feature === feature.index).map(({ number }) => number)
  return [name, `"${feature.tool}"`, `${numbers[0] ?? ''} to ${numbers.at(-1) ?? ''}`]
}

const changes = ({ changed, units }: Sheet): Markup[] => {
  if (changed === undefined) return []
  const lines = isNothing(changed)
    ? ['Nothing: every step, reading and size is as it was.']
    : changedLines(changed, units)
  const same =
    changed.facts.length > 0 && changed.features.length === 0 ? ['No step, reading or size is another one.'] : []
  return [
    tag('h2', {}, tag('span', {}, 'Changed since the sheet that was kept (then -> now)')),
    tag('ul', { class: 'changed' }, ...[...lines, ...same].map((each) => tag('li', {}, each.trim()))),
  ]
}
