import type { Sheet, SheetStep } from '../sheet.ts'
import { boxOf } from './boxes.ts'
import { type Column, columnOf, columnsOf } from './columns.ts'
import { partOf, type Read, standing } from './parts.ts'
import { stopOf } from './stop.ts'
import type { Block, Box, Card, CellPart, PlannedFeature } from './types.ts'

/** A card for each planned feature of a sheet, made from its steps as data. */
export const cardsOf = (sheet: Sheet): Card[] =>
  sheet.features.flatMap((feature) =>
    feature.status === 'planned' ? [{ feature, blocks: blocksOf(sheet, feature) }] : [],
  )

type Cut = { readonly step: SheetStep; readonly column: Column; readonly part: CellPart; readonly before: Read }

const blocksOf = (sheet: Sheet, feature: PlannedFeature): Block[] => {
  const steps = sheet.steps.filter((step) => step.feature === feature.index)
  const corrected = correctedIn(steps)
  const blocks: Block[] = []
  const aside = besideChamfer(steps)
  let out: CellPart | null = null
  let read: Read = {}
  let cuts: Cut[] = []
  for (const step of steps) {
    const checks = (sheet.supervised ?? []).filter(({ before: at }) => at === step.number)
    if (checks.length > 0) {
      close(sheet, blocks, cuts, feature)
      cuts = []
      blocks.push(...checks.map((check) => ({ kind: 'supervised', check }) as const))
    }
    const before = read
    const { part, after } = partOf(sheet.lathe, step, before, corrected)
    const column = columnOf(step)
    read = after
    if (aside.includes(step)) {
      if (step.purpose === 'clear-to-measure') out = part
      if (step.purpose !== 'chamfer') continue
      close(sheet, blocks, cuts, feature)
      cuts = []
      addBox(blocks, asideOf(boxOf(step, part, feature, sheet), out, aside))
      continue
    }
    if (column !== null) {
      cuts.push({ step, column, part, before })
      continue
    }
    close(sheet, blocks, cuts, feature)
    cuts = []
    addBox(blocks, boxOf(step, part, feature, sheet))
    if (step.action === 'measure') blocks.push(stopOf(step, feature, steps, sheet.lathe))
  }
  close(sheet, blocks, cuts, feature)
  return blocks
}

/** For a chamfer the tool goes out and comes back to the same mark: who knows the work needs one box for it. */
const besideChamfer = (steps: readonly SheetStep[]): readonly SheetStep[] => {
  const at = steps.findIndex(({ purpose }) => purpose === 'chamfer')
  return at < 0 ? [] : steps.slice(at - 2, at + 3)
}

const asideOf = (box: Box, out: CellPart | null, aside: readonly SheetStep[]): Box => ({
  ...box,
  steps: [aside[0]!.number, aside.at(-1)!.number],
  does: [...box.does, ', the tool OUT ', ...(out?.whole ?? ['well away']), ' and back'],
})

/** Cuts that alternate have the tool out only at their end: that is a box, so that their table has no column for it. */
const close = (sheet: Sheet, blocks: Block[], cuts: readonly Cut[], feature: PlannedFeature): void => {
  const last = cuts.at(-1)
  if (last === undefined) return
  const alone = last.column.ends && cuts.filter(({ column }) => column.ends).length === 1 && cuts.length > 4
  const alternating = alone && rowsOf(cuts.slice(0, -1)).length > 1
  blocks.push(tableOf(sheet, alternating ? cuts.slice(0, -1) : cuts))
  if (alternating) addBox(blocks, boxOf(last.step, last.part, feature, sheet))
}

/** Boxes that follow each other stand together. */
const addBox = (blocks: Block[], box: Box): void => {
  const last = blocks.at(-1)
  if (last?.kind === 'boxes') blocks[blocks.length - 1] = { ...last, boxes: [...last.boxes, box] }
  else blocks.push({ kind: 'boxes', boxes: [box] })
}

const tableOf = ({ lathe }: Sheet, cuts: readonly Cut[]): Block => {
  const columns = columnsOf(cuts.map(({ column }) => column))
  const rows = rowsOf(cuts)
  return {
    kind: 'cuts',
    columns,
    rows: rows.map((row) => ({
      from: row[0]!.step.number,
      to: row.at(-1)!.step.number,
      cells: columns.map((column) => {
        const parts = row.filter((cut) => cut.column.id === column.id).map(({ part }) => part)
        // A slide that stays where it is for this cut is told all the same: a row is read alone.
        return parts.length === 0 && column.places ? standing(lathe, row[0]!.before, column.slide, row[0]!.step) : parts
      }),
    })),
  }
}

/** A row ends where a column to the left is next, and after the tool is out. */
const rowsOf = (cuts: readonly Cut[]): Cut[][] => {
  const columns = columnsOf(cuts.map(({ column }) => column))
  const at = ({ column }: Cut): number => columns.findIndex(({ id }) => id === column.id)
  const rows: Cut[][] = []
  for (const cut of cuts) {
    const before = rows.at(-1)?.at(-1)
    if (before === undefined || before.column.ends || at(cut) < at(before)) rows.push([cut])
    else rows.at(-1)!.push(cut)
  }
  return rows
}

/** The steps whose reading follows from what is measured. */
const correctedIn = (steps: readonly SheetStep[]): ReadonlySet<number> =>
  new Set(
    steps.flatMap(({ corrections, widthCorrections }) =>
      [corrections, widthCorrections].flatMap(
        (table) => table?.rows.flatMap(({ finishes }) => finishes.map(({ step }) => step)) ?? [],
      ),
    ),
  )
