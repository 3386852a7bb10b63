import type { Tables } from '../finish/tables.ts'
import type { Remains } from '../finish/what-remains.ts'
import type { Pass } from '../replay/passes.ts'
import { buildSheet } from './build.ts'
import { drawingFrom, withDrawings } from './drawing.ts'
import type { Sheet, SheetFeature } from './sheet.ts'

/**
 * The sheet of what remains of one feature. The whole sheet is built, so that every step keeps its number; then
 * everything before the rest is left out.
 */
export const remainingSheet = (
  { plan, index, stop, cut }: Remains,
  tables: readonly Tables[],
  passes: readonly Pass[] | null = null,
): Sheet => {
  const built = buildSheet(plan, tables)
  const sheet = passes === null ? built : withDrawings(built, plan, [...Array(index).fill([]), passes])
  const own = stop === null ? [] : sheet.steps.filter((step) => step.feature === index).slice(stop.at + 1)
  return {
    ...sheet,
    title: `${sheet.title}: what remains`,
    ...(cut === undefined ? {} : cut),
    orderReasons: [],
    warnings: sheet.warnings.map((warning) => (warning.feature === null ? warning : { ...warning, feature: 0 })),
    features: [from(sheet.features[index]!, own[0]?.number ?? 1)],
    steps: own.map((step) => ({ ...step, feature: 0 })),
  }
}

const from = (feature: SheetFeature, step: number): SheetFeature =>
  feature.status === 'planned' && feature.drawing !== undefined
    ? { ...feature, index: 0, drawing: drawingFrom(feature.drawing, step) }
    : { ...feature, index: 0 }
