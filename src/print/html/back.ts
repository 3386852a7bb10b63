import { number, words } from '../../phrase/words.ts'
import type { GroundTool } from '../../sheet/grind/grind.ts'
import { SHAPE_WORDS } from '../../sheet/grind/shapes.ts'
import type { InspectionLine, Sheet } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { type Markup, tag } from '../markup.ts'
import { DECISIONS } from '../text/inspection.ts'
import { warning } from './feature.ts'
import { cells, facts, table, told } from './phrases.ts'
import { limitsText } from './proof.ts'

/** A table to fill in at the bench. */
export const inspection = ({ features, units, decision }: Sheet): Markup[] => {
  const cut = features.flatMap((feature) =>
    feature.status === 'planned' && feature.inspection.length > 0 ? [feature] : [],
  )
  if (cut.length === 0) return []
  return [
    tag(
      'section',
      { class: 'back' },
      tag('h2', {}, tag('span', {}, 'Inspection')),
      tag('p', {}, `${DECISIONS[decision]} Clean, deburred and cool. Measured by ____________________ on ____________`),
      ...cut.flatMap((feature) => [
        tag('h3', {}, feature.name),
        table(
          ['size', 'planned', 'limits', 'measured', 'ok?'],
          feature.inspection.flatMap((line) => inspected(line, units)),
        ),
      ]),
    ),
  ]
}

const inspected = (line: InspectionLine, units: Units): Markup[] => [
  tag(
    'tr',
    {},
    ...cells('td', [
      line.label,
      line.pair === null ? number(line.planned, units) : '',
      limitsText(line.limits, units),
      line.asked ? '_________' : '',
      line.asked ? '____' : '',
    ]),
  ),
  tag(
    'tr',
    { class: 'under' },
    tag(
      'td',
      { colspan: 5 },
      [line.using, ...(line.decision === null ? [] : [line.decision.says])]
        .map((each) => words(each, units))
        .join('; '),
    ),
  ),
]

/** What common mistakes would measure. */
export const slips = ({ slips, units }: Sheet): Markup[] =>
  slips === undefined || slips.length === 0
    ? []
    : [
        tag(
          'section',
          { class: 'back' },
          tag('h2', {}, tag('span', {}, 'Common mistakes')),
          tag(
            'p',
            {},
            'What common mistakes on this job would measure, against the sizes expected. Each was replayed.',
          ),
          ...slips.flatMap(({ name, lines, signs }) => [
            tag('h3', {}, name),
            ...(lines.length === 0
              ? [tag('p', {}, 'No single mistake of those that are looked for would show.')]
              : [
                  table(
                    ['measures', 'the mistake'],
                    lines.map(({ shows, mistake }) => tag('tr', {}, ...cells('td', [words(shows, units), mistake]))),
                  ),
                ]),
            tag('p', {}, 'Signs of what cannot be replayed:'),
            tag('ul', {}, ...signs.map((sign) => tag('li', {}, words(sign, units)))),
          ]),
        ),
      ]

/** How the tools are ground. */
export const grinding = ({ grind }: Sheet): Markup[] => {
  if (grind === undefined) return []
  const { units, cautions, tools, left } = grind
  return [
    tag(
      'section',
      { class: 'back' },
      tag('h2', {}, tag('span', {}, 'Tools to grind')),
      tag('ul', { class: 'cautions' }, ...cautions.map((each) => tag('li', {}, told(each, units)))),
      ...tools.flatMap((tool) => toolOf(tool, units)),
      ...left.map(({ name, reason }) =>
        tag('p', { class: 'note' }, `No tool for ${name}, which cannot be cut as asked: ${words(reason, units)}.`),
      ),
    ),
  ]
}

const toolOf = (tool: GroundTool, units: Units): Markup[] => {
  const [first] = tool.facts
  const shape =
    first === undefined
      ? ''
      : `, ${SHAPE_WORDS[first.shape].called}, ${first.measured ? 'measured' : 'still to be ground'}`
  return [
    tag('h3', {}, `"${tool.name}"${shape}`),
    ...facts(tool.says.map(({ label, says }) => [label, says.map((each) => told(each, units))])),
    ...tool.warnings.map((each) => warning(words(each, units))),
    tag('ol', {}, ...tool.order.map((each) => tag('li', {}, told(each, units)))),
  ]
}
