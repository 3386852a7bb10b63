import type { Key } from '../../exercise/key.ts'
import { type Markup, tag } from '../markup.ts'
import { paperPage } from './paper.ts'
import { cells, table } from './phrases.ts'

export const keyHtml = ({ title, teaches, sheets }: Key): string =>
  paperPage(`${title}, key`, [
    tag('header', {}, tag('h1', {}, `${title}: key`), tag('p', {}, teaches)),
    ...sheets.flatMap(({ sheet, learner, values, answers }): Markup[] => [
      tag('h2', {}, `sheet ${sheet} ${learner ?? ''}`),
      tag(
        'p',
        {},
        Object.entries(values)
          .map(([path, value]) => `${path}: ${value}`)
          .join('; '),
      ),
      table(
        ['', 'asks', 'right', 'within', 'working', 'marks'],
        answers.map(({ number, asks, key, within, working, outOf }) =>
          tag(
            'tr',
            {},
            ...cells('td', [tag('span', { class: 'line' }, `(${number})`), asks, key, within, working, String(outOf)]),
          ),
        ),
      ),
    ]),
  ])
