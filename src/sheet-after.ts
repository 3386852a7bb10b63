import type { Taken } from './finish/remaining.ts'
import type { Source } from './finish/source.ts'
import { tablesOf } from './finish/tables.ts'
import { whatRemains } from './finish/what-remains.ts'
import type { Plan } from './plan/plan.ts'
import { remainingSheet } from './sheet/remaining.ts'
import type { Sheet } from './sheet/sheet.ts'

/** The sheet of what remains of one feature after it was measured. */
export const sheetAfter = (plan: Plan, index: number, taken: Taken, source?: Source): Sheet => {
  const remains = whatRemains(plan, index, taken, source)
  return remainingSheet(remains, tablesOf(remains.plan, { stops: false }))
}
