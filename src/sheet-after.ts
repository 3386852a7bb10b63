import type { Taken } from './finish/remaining.ts'
import type { Source } from './finish/source.ts'
import { tablesOf } from './finish/tables.ts'
import { type Remains, whatRemains } from './finish/what-remains.ts'
import type { Plan } from './plan/plan.ts'
import { type Pass, passesOf } from './replay/passes.ts'
import { remainingSheet } from './sheet/remaining.ts'
import type { Sheet } from './sheet/sheet.ts'

/** The sheet of what remains of one feature after it was measured. `drawn`: with what pictures of it are drawn from. */
export const sheetAfter = (plan: Plan, index: number, taken: Taken, source?: Source, drawn = false): Sheet => {
  const remains = whatRemains(plan, index, taken, source)
  return remainingSheet(remains, tablesOf(remains.plan, { stops: false }), drawn ? passesIn(remains) : null)
}

const passesIn = ({ plan, index }: Remains): readonly Pass[] => {
  const feature = plan.features[index]!
  return feature.status === 'planned' ? passesOf(plan.lathe, plan.setup, feature.operation, feature.before) : []
}
