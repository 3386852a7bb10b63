import { words } from '../../phrase/words.ts'
import type { Sheet, SheetFeature } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import type { Parts } from '../format.ts'
import { changedBlock } from './changed.ts'
import { beside, COLUMNS, leftAndRight, ruled, wrap } from './columns.ts'
import { backOf, frontOf, LABEL } from './front.ts'
import { grindLines } from './grind.ts'
import { inspectionLines } from './inspection.ts'
import { sheetName } from './names.ts'
import { proofLines } from './proof.ts'
import { slipLines } from './slips.ts'
import { stepLines } from './steps.ts'

/** The sheet to hang at the lathe. */
export const printText = (sheet: Sheet, parts: Parts = {}): string => {
  const lines = [
    ...head(sheet),
    ...changedBlock(sheet.changed, sheet.units),
    ...sheet.features.flatMap((feature) => featureLines(sheet, feature)),
    ...proof(sheet),
    ...details(sheet),
  ]
  if (parts.inspection === true) lines.push(...inspectionLines(sheet))
  if (sheet.grind !== undefined) lines.push('', ...grindLines(sheet.grind))
  lines.push(...slipLines(sheet))
  return `${lines.map((line) => line.trimEnd()).join('\n')}\n`
}

const head = (sheet: Sheet): string[] => [
  '='.repeat(COLUMNS),
  ...leftAndRight(sheet.title.toUpperCase(), sheet.drawingNumber ?? ''),
  ...ruled(sheetName(sheet), ''),
  ...frontOf(sheet.heading, sheet.units),
  '',
  ...beside(' !', 3, sheet.cautions.join(' ')),
  ...block('Order', sheet.orderReasons),
  ...block(
    'WARNING',
    sheet.warnings.filter((warning) => warning.feature === null).map((warning) => words(warning.say, sheet.units)),
  ),
]

const featureLines = (sheet: Sheet, feature: SheetFeature): string[] => [
  '',
  ...ruled(
    `${feature.kind.toUpperCase()}: ${feature.name}`,
    sheet.features.length > 1 ? `${feature.index + 1} of ${sheet.features.length}` : '',
  ),
  ...(feature.status === 'refused' ? refusal(feature, sheet.units) : planned(sheet, feature)),
]

const planned = (sheet: Sheet, feature: Extract<SheetFeature, { status: 'planned' }>): string[] => [
  ...frontOf(feature.heading, sheet.units),
  ...block(
    'WARNING',
    feature.warnings.map((phrase) => words(phrase, sheet.units)),
  ),
  ...(feature.gains ?? []).flatMap(({ holds, says }) =>
    beside(holds ? 'In tol. if' : 'Better if', LABEL, sentence(words(says, sheet.units))),
  ),
  ...block(
    'Note',
    feature.notes.map((phrase) => words(phrase, sheet.units)),
  ),
  ...stepLines(
    sheet.steps.filter((step) => step.feature === feature.index),
    sheet.units,
    sheet.places,
  ),
]

const refusal = (feature: Extract<SheetFeature, { status: 'refused' }>, units: Units): string[] => [
  ...beside('REFUSED', LABEL, sentence(words(feature.reason, units))),
  ...beside('Remedy', LABEL, sentence(words(feature.remedy, units))),
  ...beside('', LABEL, 'No steps are given: it cannot be cut as asked.'),
]

const proof = (sheet: Sheet): string[] => {
  const cut = sheet.features.filter((feature) => feature.status === 'planned')
  if (cut.length === 0) return []
  return [
    '',
    '='.repeat(COLUMNS),
    'PROOF',
    '='.repeat(COLUMNS),
    ...cut.flatMap((feature, i) => [...(i > 0 ? [''] : []), ...proofLines(feature, sheet.units)]),
  ]
}

/** What the front left out: how dials are counted, why, what the tool is besides, and where the speed comes from. */
const details = (sheet: Sheet): string[] => {
  const lines = [
    ...backOf(sheet.heading, sheet.units),
    ...sheet.features.flatMap((feature) => {
      if (feature.status === 'refused') return []
      const own = backOf(feature.heading, sheet.units)
      return own.length === 0 ? [] : ['', ...wrap(feature.name.toUpperCase(), COLUMNS), ...own]
    }),
  ]
  return lines.length === 0 ? [] : ['', '='.repeat(COLUMNS), 'DETAILS', '='.repeat(COLUMNS), ...lines]
}

const block = (label: string, says: readonly string[]): string[] =>
  says.length === 0
    ? []
    : ['', ...says.flatMap((say, i) => beside(i === 0 || label === 'WARNING' ? label : '', LABEL, sentence(say)))]

const sentence = (text: string): string => {
  const [line = ''] = [text.trim()]
  return /[.!?]$/.test(line) ? line : `${line}.`
}
