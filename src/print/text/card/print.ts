import { heldWords, words } from '../../../phrase/words.ts'
import { cardsOf } from '../../../sheet/card/card.ts'
import type { Block, Card } from '../../../sheet/card/types.ts'
import { beforeStart } from '../../../sheet/cautions.ts'
import type { About, Sheet, SheetFeature } from '../../../sheet/sheet.ts'
import { saysOf } from '../../../sheet/sheet.ts'
import type { Parts } from '../../registry.ts'
import { beside, COLUMNS, leftAndRight, ruled, wrap } from '../columns.ts'
import { sheetName } from '../names.ts'
import { supervisedLines } from '../supervised.ts'
import { boxLines, flowed } from './boxes.ts'
import { stopLines } from './stop.ts'
import { cutLines } from './table.ts'

/** As many lines as hang beside a lathe without leafing. */
const PAGE = 40

/** A page a feature, for who knows the work. A refused feature has its reason and no cuts. */
export const printCards = (sheet: Sheet, { width = COLUMNS }: Parts = {}): string => {
  const cards = new Map(cardsOf(sheet).map((card) => [card.feature.index, card]))
  const pages = sheet.features.flatMap((feature) => {
    const card = cards.get(feature.index)
    return card === undefined ? [refused(sheet, feature, width)] : cardPages(sheet, card, width)
  })
  return `${pages.map((lines) => lines.map((line) => line.trimEnd()).join('\n')).join('\n\n')}\n`
}

/**
 * On one page if its blocks fit: with empty lines between them, without, or with a single cut in lines instead of in a
 * table; otherwise on as many as it takes. A narrow page is a roll, which has no end.
 */
const cardPages = (sheet: Sheet, card: Card, width: number): string[][] => {
  const head = headLines(sheet, card, width)
  const blocks = (tight: boolean) => card.blocks.map((block) => blockLines(block, sheet, width, tight))
  const airy = [...head, ...blocks(false).flatMap((lines) => ['', ...lines])]
  if (airy.length <= PAGE || width < COLUMNS) return [airy]
  const dense = [...head, ...blocks(false).flat()]
  if (dense.length <= PAGE) return [dense]
  const tight = withStops(card.blocks, blocks(true))
  return leafed((page) => titleLines(sheet, card.feature, width, page), head.slice(2), tight)
}

/** What is done at a stop stays with what is measured there. */
const withStops = (blocks: readonly Block[], lines: readonly (readonly string[])[]): string[][] => {
  const joined: string[][] = []
  blocks.forEach(({ kind }, i) => {
    if (kind === 'stop' && joined.length > 0) joined.at(-1)!.push(...lines[i]!)
    else joined.push([...lines[i]!])
  })
  return joined
}

/** Blocks that fit on a page stay whole. Each page has the title; the first has the rest of the head. */
const leafed = (
  title: (page: string) => readonly string[],
  head: readonly string[],
  blocks: readonly (readonly string[])[],
): string[][] => {
  const room = PAGE - title('').length
  const pages: string[][] = [[...head]]
  for (const block of blocks) {
    if (pages.at(-1)!.length + block.length > room && block.length <= room / 2) pages.push([])
    for (const row of rowsOf(block)) {
      if (pages.at(-1)!.length + row.length > room) pages.push([])
      pages.at(-1)!.push(...row)
    }
  }
  return pages.map((page, i) => [...title(pages.length > 1 ? `page ${i + 1} of ${pages.length}` : ''), ...page])
}

/** A box to tick and the lines under it: in and out of one cut are never on two pages. */
const rowsOf = (block: readonly string[]): readonly (readonly string[])[] => {
  const rows: string[][] = []
  for (const line of block) {
    if (rows.length === 0 || line.includes('[ ]') || !rows.at(-1)![0]!.includes('[ ]')) rows.push([line])
    else rows.at(-1)!.push(line)
  }
  return rows
}

const blockLines = (block: Block, { units }: Sheet, width: number, tight: boolean): string[] => {
  switch (block.kind) {
    case 'boxes':
      return boxLines(block, units, width)
    case 'cuts':
      return cutLines(block, units, width, tight)
    case 'supervised':
      return supervisedLines(block.check, units, 0, width)
    case 'stop':
      return stopLines(block, units, width)
  }
}

const titleLines = (sheet: Sheet, feature: SheetFeature, width: number, page = ''): string[] => [
  ...ruled(
    [sheet.drawingNumber, feature.name.toUpperCase()].filter((each) => each !== null).join('  '),
    [...(sheet.features.length > 1 ? [`${feature.index + 1} of ${sheet.features.length}`] : []), page]
      .filter(Boolean)
      .join(', '),
    width,
  ),
  ...leftAndRight(sheet.title, sheetName(sheet), width),
]

const headLines = (sheet: Sheet, { feature }: Card, width: number): string[] => {
  const { units } = sheet
  const say = (about: About): string[] => saysOf(feature.heading, about).map((phrase) => heldWords(phrase, units))
  const may = feature.proof.lines.filter(({ verdict }) => verdict === 'may not hold')
  return [
    ...titleLines(sheet, feature, width),
    ...flowed([...say('drawn'), `tool ${say('tool')[0]}`, `on ${say('surface')[0]}`], width),
    ...feature.warnings.flatMap((phrase) => beside('WARNING', 9, heldWords(phrase, units), width)),
    ...(may.length === 0 ? [] : wrap(`MAY MISS TOLERANCE: ${may.map(({ label }) => label).join(', ')}`, width)),
    ...flowed(
      ['[ ] glasses', '[ ] no rings, gloves, cuffs', `[ ] ${beforeStart(sheet.part.held)}`, '[ ] turned by hand'],
      width,
    ),
    ...wrap("Machine's manual, shop's rules, local codes and qualified supervisor come first.", width),
  ]
}

const refused = (sheet: Sheet, feature: SheetFeature, width: number): string[] => [
  ...titleLines(sheet, feature, width),
  ...(feature.status === 'refused'
    ? [
        ...beside('REFUSED', 9, words(feature.reason, sheet.units), width),
        ...beside('Remedy', 9, words(feature.remedy, sheet.units), width),
      ]
    : []),
]
