import { number, words } from '../../phrase/words.ts'
import type { ProofLine, Sheet, SheetFeature } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { type Markup, tag } from '../markup.ts'
import { AT_THE_BACK } from './feature.ts'
import { cells, facts, table, told } from './phrases.ts'

type Planned = Extract<SheetFeature, { status: 'planned' }>

/** What was proved, and what it was worked out from. */
export const proof = (sheet: Sheet): Markup[] => {
  const cut = sheet.features.filter((feature): feature is Planned => feature.status === 'planned')
  if (cut.length === 0) return []
  return [
    tag(
      'section',
      { class: 'back' },
      tag('h2', {}, tag('span', {}, 'Proof')),
      ...cut.flatMap((feature) => proofOf(feature, sheet.units)),
    ),
    tag(
      'section',
      { class: 'back' },
      tag('h2', {}, tag('span', {}, 'Worked out from')),
      ...cut.flatMap((feature) => sources(feature, sheet.units)),
      ...facts(
        sheet.heading
          .filter(({ about }) => about === 'sources')
          .map(({ label, says }) => [label, says.map((each) => told(each, sheet.units))]),
      ),
    ),
  ]
}

const proofOf = (feature: Planned, units: Units): Markup[] => {
  const lines = feature.proof.lines.filter(({ settled }) => !settled)
  return [
    tag('h3', {}, feature.name),
    tag('p', {}, `${words(feature.proof.replayed, units)}.`),
    ...(lines.length === 0
      ? []
      : [
          table(
            ['size', 'planned', 'worst low to high', 'rss ±', 'limits'],
            lines.flatMap((line) => rows(line, units)),
          ),
        ]),
  ]
}

const rows = (line: ProofLine, units: Units): Markup[] => {
  const under = [
    atStop(line, units),
    verdict(line, units),
    line.worstCause === null ? '' : `largest cause: ${line.worstCause}`,
  ].filter(Boolean)
  const remedy = line.remedy === null ? [] : [words(line.remedy, units)]
  return [
    tag(
      'tr',
      {},
      ...cells('td', [
        line.label,
        number(line.planned, units),
        `${number(line.low, units)} to ${number(line.high, units)}`,
        number(line.rss, units),
        limitsText(line.limits, units),
      ]),
    ),
    ...[under.join('; '), ...remedy]
      .filter((text) => text !== '')
      .map((text) => tag('tr', { class: 'under' }, tag('td', { colspan: 5 }, text))),
  ]
}

const atStop = ({ measured }: ProofLine, units: Units): string =>
  measured === null
    ? ''
    : `measured and corrected at the stop ${number(measured.low, units)} to ${number(measured.high, units)}`

export const limitsText = (limits: ProofLine['limits'], units: Units): string =>
  limits === null ? 'none given' : `${number(limits[0], units)} to ${number(limits[1], units)}`

const verdict = (line: ProofLine, units: Units): string => {
  if (line.spare === null) return ''
  const spare = number(line.spare, units)
  return line.verdict === 'holds'
    ? `in tolerance, worst case, ${spare} to spare`
    : `MAY MISS TOLERANCE, ${spare} beyond a limit`
}

const sources = (feature: Planned, units: Units): Markup[] => [
  tag('h3', {}, feature.name),
  ...facts(
    feature.heading.flatMap(({ about, label, says }) => {
      const behind = AT_THE_BACK.has(about) ? says : about === 'speed' ? says.slice(1) : []
      return behind.length === 0 ? [] : [[label, behind.map((each) => told(each, units))] as const]
    }),
  ),
]
