import type { OpenFeature, Worksheet } from '../../exercise/worksheet.ts'
import { words } from '../../phrase/words.ts'
import { type Child, type Markup, tag } from '../markup.ts'
import { framed } from '../svg/picture.ts'
import { sketchOf } from '../svg/sketch.ts'
import { paperPage } from './paper.ts'
import { told } from './phrases.ts'

/** A learner's sheet to print. */
export const worksheetHtml = (sheet: Worksheet): string =>
  paperPage(`${sheet.title}, sheet ${sheet.sheet}`, [
    head(sheet),
    facts(sheet, sheet.heading),
    tag('ul', { class: 'cautions' }, ...sheet.cautions.map((each) => tag('li', {}, each))),
    ...sheet.features.flatMap((feature) => [
      tag('h2', {}, `${feature.kind}: ${feature.name}`),
      tag('figure', {}, framed(sketchOf(feature, sheet))),
      facts(sheet, feature.heading),
      ...feature.warnings.map((each) => tag('p', {}, tag('strong', {}, 'WARNING '), words(each, sheet.units))),
    ]),
    ...questions(sheet),
    ...sheet.features.flatMap((feature) => steps(sheet, feature)),
    tag('h2', {}, 'Marks'),
    tag(
      'p',
      {},
      ...sheet.blanks.flatMap(({ number, outOf }) => [
        tag('span', { class: 'line' }, `(${number}) ____ / ${outOf}`),
        '   ',
      ]),
    ),
    ...(sheet.steps.length === 0
      ? []
      : [tag('p', {}, 'Size ______________   Finish ______________   Burr ______________   pass / fail ______')]),
  ])

const head = (sheet: Worksheet): Markup =>
  tag(
    'header',
    {},
    tag('h1', {}, sheet.title),
    tag(
      'p',
      { class: 'who' },
      tag('span', {}, `sheet ${sheet.sheet}`),
      tag('span', {}, `Name ${sheet.learner ?? '_'.repeat(30)}`),
      tag('span', {}, 'Date ______________'),
      tag('span', {}, `Marks ______ of ${sheet.outOf}`),
    ),
    tag('p', {}, `To learn: ${sheet.teaches}`),
    tag('p', {}, `The job: ${sheet.job}`),
  )

const facts = ({ units }: Worksheet, heading: OpenFeature['heading']): Markup =>
  tag(
    'dl',
    {},
    ...heading.map(({ label, says }) =>
      tag('div', {}, tag('dt', {}, label), ...says.map((each) => tag('dd', {}, told(each, units)))),
    ),
  )

const steps = (sheet: Worksheet, feature: OpenFeature): Markup[] => {
  const own = sheet.steps.filter((step) => step.feature === feature.index)
  if (own.length === 0) return []
  const rows = own.flatMap((step, i): Markup[] => {
    const more: Child[] = step.more.map((each) => tag('span', { class: 'more' }, told(each, sheet.units)))
    const group =
      own[i - 1]?.group === step.group ? [] : [tag('tr', { class: 'group' }, tag('td', { colspan: 4 }, step.group))]
    return [
      ...group,
      tag(
        'tr',
        {},
        tag('td', {}, String(step.number)),
        tag('td', {}, step.thing),
        tag('td', {}, told(step.does, sheet.units), more),
        tag('td', {}, told(step.effect, sheet.units)),
      ),
    ]
  })
  const name = sheet.features.length > 1 ? [tag('h3', {}, feature.name)] : []
  return [...name, tag('table', { class: 'steps' }, tag('tbody', {}, ...rows))]
}

const questions = ({ questions, units }: Worksheet): Markup[] =>
  questions.length === 0
    ? []
    : [
        tag('h2', {}, 'Questions'),
        ...questions.map(({ number, says, choices }) =>
          tag(
            'div',
            {},
            tag('p', {}, tag('strong', {}, `(${number}) `), told(says, units)),
            choices.length === 0 ? [] : tag('ul', {}, ...choices.map((each) => tag('li', {}, each))),
          ),
        ),
      ]
