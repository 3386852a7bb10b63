import { heldWords, words } from '../../phrase/words.ts'
import type { HeadingLine, Sheet, SheetFeature } from '../../sheet/sheet.ts'
import type { SupervisedCheck } from '../../sheet/supervised.ts'
import type { Units } from '../../units/length.ts'
import type { Parts } from '../format.ts'
import { type Again, againIn, type Planned } from './again.ts'
import { changedBlock } from './changed.ts'
import { beside, COLUMNS, ruled } from './columns.ts'
import { details } from './details.ts'
import { commonSlides, frontOf, LABEL } from './front.ts'
import { grindLines } from './grind.ts'
import { inspectionLines } from './inspection.ts'
import { sheetName } from './names.ts'
import { causesOf, proofLegend, proofLines, replayedLines } from './proof.ts'
import { sketchLines } from './sketch.ts'
import { slipLines } from './slips.ts'
import { againLines, stepLines } from './steps.ts'
import { supervisedLines } from './supervised.ts'

/** The sheet as it is printed: how wide, what its features have in common, and what was explained already. */
type Page = {
  readonly sheet: Sheet
  readonly width: number
  readonly common: readonly HeadingLine[]
  readonly again: ReadonlyMap<number, Again>
  readonly told: Set<string>
}

/** The sheet to hang at the lathe. */
export const printText = (sheet: Sheet, parts: Parts = {}): string => {
  const width = parts.width ?? COLUMNS
  const page = { sheet, width, common: commonSlides(sheet), again: againIn(sheet), told: new Set<string>() }
  const lines = [
    ...head(page),
    ...changedBlock(sheet.changed, sheet.units, width),
    ...sheet.features.flatMap((feature) => featureLines(page, feature)),
    ...proof(page),
    ...details(sheet, width),
  ]
  if (parts.inspection === true) lines.push(...inspectionLines(sheet, width))
  if (sheet.grind !== undefined) lines.push('', ...grindLines(sheet.grind, width))
  lines.push(...slipLines(sheet, width))
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`
}

const head = ({ sheet, width, common }: Page): string[] => [
  ...ruled(
    [sheet.title.toUpperCase(), sheet.drawingNumber].filter((each) => each !== null).join('  '),
    sheetName(sheet),
    width,
  ),
  ...frontOf([...sheet.heading, ...common], sheet.units, width),
  ...beside(' !', 3, sheet.cautions.join(' '), width),
  ...block('Order', sheet.orderReasons.slice(0, 1), width),
  ...block(
    'WARNING',
    sheet.warnings.filter((warning) => warning.feature === null).map((warning) => words(warning.say, sheet.units)),
    width,
  ),
]

const featureLines = (page: Page, feature: SheetFeature): string[] => {
  const { sheet, width } = page
  const again = page.again.get(feature.index)
  return [
    '',
    ...ruled(
      `${feature.kind.toUpperCase()}: ${feature.name}`,
      sheet.features.length > 1 ? `${feature.index + 1} of ${sheet.features.length}` : '',
      width,
    ),
    ...(feature.status === 'refused'
      ? refusal(feature, sheet.units, width)
      : again === undefined
        ? planned(page, feature)
        : cutAgain(again, sheet, width)),
  ]
}

const planned = (page: Page, feature: Planned): string[] => {
  const { sheet, width, common, told } = page
  return [
    ...frontOf(
      feature.heading.filter(({ about }) => !common.some((line) => line.about === about)),
      sheet.units,
      width,
    ),
    ...(feature.drawing === undefined ? [] : sketchLines(feature.drawing, sheet.units, width)),
    ...alikeLines(page, feature),
    ...block(
      'WARNING',
      feature.warnings.map((phrase) => heldWords(phrase, sheet.units)),
      width,
    ),
    ...(feature.gains ?? []).flatMap(({ holds, says }) =>
      beside(holds ? 'In tol. if' : 'Better if', LABEL, sentence(words(says, sheet.units)), width),
    ),
    ...block(
      'Note',
      feature.notes.map((phrase) => heldWords(phrase, sheet.units)),
      width,
    ),
    ...stepLines(
      sheet.steps.filter((step) => step.feature === feature.index),
      {
        units: sheet.units,
        places: sheet.places ?? [],
        width,
        told,
        checks: checksOf(sheet, feature),
        ...beforeIn(sheet, feature),
      },
    ),
  ]
}

/** The planned feature before, whose set-up may still be as it was. */
const beforeIn = ({ features, steps }: Sheet, feature: Planned): Pick<Parameters<typeof stepLines>[1], 'before'> => {
  const before = features.filter(({ status, index }) => status === 'planned' && index < feature.index).at(-1)
  if (before === undefined) return {}
  return { before: { name: before.name, steps: steps.filter((step) => step.feature === before.index) } }
}

/** A feature that is cut as the one before: where it is, and which steps are done again. */
const cutAgain = (again: Again, sheet: Sheet, width: number): string[] => [
  ...frontOf(
    again.feature.heading.filter(({ about }) => about === 'drawn'),
    sheet.units,
    width,
  ),
  ...againLines(again, sheet.units, width),
  ...checksOf(sheet, again.feature).flatMap((check) => supervisedLines(check, sheet.units, INDENT, width)),
]

const INDENT = 5

const checksOf = ({ supervised = [] }: Sheet, { index }: Planned): readonly SupervisedCheck[] =>
  supervised.filter(({ feature }) => feature === index)

/** The features that are cut by the same steps. */
const alikeLines = ({ again, width }: Page, { index }: Planned): string[] => {
  const names = [...again.values()].flatMap(({ like, feature }) => (like.index === index ? [feature.name] : []))
  return names.length === 0 ? [] : beside('Alike', LABEL, `${names.join(', ')}: the same steps again`, width)
}

const refusal = (feature: Extract<SheetFeature, { status: 'refused' }>, units: Units, width: number): string[] => [
  ...beside('REFUSED', LABEL, sentence(words(feature.reason, units)), width),
  ...beside('Remedy', LABEL, sentence(words(feature.remedy, units)), width),
  ...beside('', LABEL, 'No steps are given: it cannot be cut as asked.', width),
]

const proof = ({ sheet, width, again }: Page): string[] => {
  const cut = sheet.features.flatMap((feature) => (feature.status === 'planned' ? [feature] : []))
  if (cut.length === 0) return []
  const causes = causesOf(cut)
  return [
    '',
    ...ruled('PROOF', '', width),
    ...replayedLines(cut, sheet.units, width),
    ...cut.flatMap((feature) => proofLines(feature, cut, sheet.units, causes, width, again.get(feature.index)?.like)),
    ...proofLegend(cut, causes, width),
  ]
}

const block = (label: string, says: readonly string[], width: number): string[] =>
  says.flatMap((say, i) => beside(i === 0 || label === 'WARNING' ? label : '', LABEL, sentence(say), width))

const sentence = (text: string): string => {
  const [line = ''] = [text.trim()]
  return /[.!?]$/.test(line) ? line : `${line}.`
}
