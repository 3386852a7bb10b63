import type { Phrase } from '../../phrase/phrase.ts'
import { number, words } from '../../phrase/words.ts'
import type { ProofLine, Sheet, SheetFeature, SheetStep } from '../../sheet/sheet.ts'
import type { Parts } from '../format.ts'
import { changedLines, isNothing } from '../text/changed.ts'
import { sheetName } from '../text/names.ts'

type Planned = Extract<SheetFeature, { status: 'planned' }>
type Said = (phrase: Phrase) => string

/** The sheet in CommonMark: headings, a box to tick for each step, tables for the proof and the inspection. */
export const printMarkdown = (sheet: Sheet, parts: Parts = {}): string => {
  const said: Said = (phrase) => plain(words(phrase, sheet.units))
  const blocks = [
    `# ${[sheet.title, sheet.drawingNumber].flatMap((each) => (each === null ? [] : [plain(each)])).join(', ')}`,
    plain(sheetName(sheet)),
    ...changes(sheet),
    list(sheet.heading.map(({ label, says }) => `**${label}** ${says.map(said).join('; ')}`)),
    sheet.cautions.map((each) => `> ${plain(each)}`).join('\n'),
    ...sheet.orderReasons.map(plain),
    ...sheet.warnings.filter(({ feature }) => feature === null).map(({ say }) => warning(said(say))),
    ...sheet.features.flatMap((feature) => featureBlocks(sheet, feature, said)),
    ...proof(sheet, said),
    ...(parts.inspection === true ? inspection(sheet, said) : []),
    ...slips(sheet, said),
  ]
  return `${blocks.filter((each) => each !== '').join('\n\n')}\n`
}

const changes = ({ changed, units }: Sheet): string[] => {
  if (changed === undefined) return []
  const lines = isNothing(changed)
    ? ['Nothing: every step, reading and size is as it was.']
    : changedLines(changed, units)
  return ['## Changed since the sheet that was kept', list(lines.map((line) => plain(line.trim())))]
}

const featureBlocks = (sheet: Sheet, feature: SheetFeature, said: Said): string[] => {
  const of = sheet.features.length > 1 ? ` (${feature.index + 1} of ${sheet.features.length})` : ''
  const heading = `## ${plain(capital(feature.kind))}: ${plain(feature.name)}${plain(of)}`
  if (feature.status === 'refused')
    return [
      heading,
      list([`**REFUSED** ${said(feature.reason)}`, `**Remedy** ${said(feature.remedy)}`]),
      ...feature.warnings.map((each) => warning(said(each))),
    ]
  return [
    heading,
    list(feature.heading.map(({ label, says }) => `**${label}** ${says.map(said).join('; ')}`)),
    ...feature.warnings.map((each) => warning(said(each))),
    ...(feature.gains ?? []).map(({ holds, says }) => `**${holds ? 'In tol. if' : 'Better if'}** ${said(says)}`),
    ...feature.notes.map(said),
    ...steps(sheet, feature, said),
  ]
}

/** Each group of steps under its heading; the places of a form that is stepped along are one line each. */
const steps = (sheet: Sheet, { index }: Planned, said: Said): string[] => {
  const own = sheet.steps.filter((step) => step.feature === index)
  const groups = own.map(({ group }, i) => (group === own[i - 1]?.group ? null : group))
  const starts = groups.flatMap((group, i) => (group === null ? [] : [i]))
  return starts.flatMap((start, n) => [
    `### ${capital(groups[start]!)}`,
    own
      .slice(start, starts[n + 1])
      .flatMap((step) => stepLines(sheet, step, said))
      .join('\n'),
  ])
}

const stepLines = ({ places = [], supervised = [], units }: Sheet, step: SheetStep, said: Said): string[] => {
  const place = places.find(({ from, to }) => from <= step.number && step.number <= to)
  if (place !== undefined && place.from !== step.number) return []
  const { thing, does, effect } = place ?? { ...step, does: [...(step.first ?? []), ...step.does] }
  const numbered = place === undefined ? `${step.number}` : `${place.from}-${place.to}`
  const does_ = [said(does), ...(effect.length === 0 ? [] : [`*${said(effect)}*`])].join(' \u2013 ')
  const boxes = supervised
    .filter(({ before }) => before === step.number)
    .map(
      ({ kind, says }) =>
        `- [ ] ${kind === 'dry-run' ? 'Dry run, ' : `Instructor ${plain('______')} `}${plain(words(says, units))}`,
    )
  return [
    ...boxes,
    `- [ ] **${numbered} ${plain(thing)}** ${does_}`,
    ...(place === undefined ? step.more : []).map((each) => `  - ${said(each)}`),
  ]
}

const proof = ({ features, units }: Sheet, said: Said): string[] => {
  const cut = features.filter((feature): feature is Planned => feature.status === 'planned')
  if (cut.length === 0) return []
  return [
    '## Proof',
    ...cut.flatMap((feature) => [
      `**${plain(feature.name)}** ${said(feature.proof.replayed)}`,
      table(
        ['size', 'planned', 'worst low to high', 'limits', ''],
        feature.proof.lines.filter(({ settled }) => !settled).map((line) => proofRow(line, units)),
      ),
    ]),
  ]
}

const proofRow = (
  { label, planned, low, high, limits, spare, verdict }: ProofLine,
  units: Sheet['units'],
): string[] => [
  label,
  number(planned, units),
  `${number(low, units)} to ${number(high, units)}`,
  limits === null ? 'none given' : `${number(limits[0], units)} to ${number(limits[1], units)}`,
  spare === null
    ? ''
    : verdict === 'holds'
      ? `in tolerance, worst case, ${number(spare, units)} to spare`
      : `MAY MISS TOLERANCE, ${number(spare, units)} beyond a limit`,
]

const inspection = ({ features, units }: Sheet, said: Said): string[] => [
  '## Inspection',
  ...features.flatMap((feature) =>
    feature.status === 'refused'
      ? []
      : [
          `**${plain(feature.name)}**`,
          table(
            ['size', 'with', 'planned', 'limits', 'measured'],
            feature.inspection.map(({ label, using, planned, limits }) => [
              label,
              words(using, units),
              number(planned, units),
              limits === null ? 'none given' : `${number(limits[0], units)} to ${number(limits[1], units)}`,
              '',
            ]),
          ),
        ],
  ),
  said(['Clean, deburred and cool.']),
]

const slips = ({ slips = [] }: Sheet, said: Said): string[] =>
  slips.length === 0
    ? []
    : [
        '## Common mistakes',
        ...slips.flatMap(({ name, lines, signs }) => [
          `**${plain(name)}**`,
          list(lines.map(({ shows, mistake }) => `${said(shows)}: ${plain(mistake)}`)),
          list(signs.map(said)),
        ]),
      ]

const list = (items: readonly string[]): string => items.map((each) => `- ${each}`).join('\n')

const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  rows.length === 0
    ? ''
    : [heads, heads.map(() => '---'), ...rows.map((row) => row.map(plain))]
        .map((row) => `| ${row.join(' | ')} |`)
        .join('\n')

const warning = (text: string): string => `> **WARNING** ${text}`

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/**
 * Text stays text: CommonMark lets a backslash stand before every mark that it gives a meaning to. Marks that mean
 * something only at the beginning of a line are never there: our own words are. Addresses would become links.
 */
const plain = (text: string): string =>
  text
    .replaceAll('\u00a0', ' ')
    .replace(/[\\`*_{}[\]<>#|&~@]/g, '\\$&')
    .replaceAll('://', ':\\/\\/')
    .replace(/www\./gi, (www) => `${www.slice(0, 3)}\\.`)
