import type { Tables } from '../finish/tables.ts'
import type { Remains } from '../finish/what-remains.ts'
import { buildSheet } from './build.ts'
import type { Sheet } from './sheet.ts'

/**
 * The sheet of what remains of one feature. The whole sheet is built, so that every step keeps its number; then
 * everything before the rest is left out.
 */
export const remainingSheet = ({ plan, index, stop, cut }: Remains, tables: readonly Tables[]): Sheet => {
  const sheet = buildSheet(plan, tables)
  const own = stop === null ? [] : sheet.steps.filter((step) => step.feature === index).slice(stop.at + 1)
  return {
    ...sheet,
    title: `${sheet.title}: what remains`,
    ...(cut === undefined ? {} : cut),
    orderReasons: [],
    warnings: sheet.warnings.map((warning) => (warning.feature === null ? warning : { ...warning, feature: 0 })),
    features: [{ ...sheet.features[index]!, index: 0 }],
    steps: own.map((step) => ({ ...step, feature: 0 })),
  }
}
