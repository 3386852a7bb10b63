import type { Plan } from '../plan/plan.ts'
import { type Again, againFor } from './again.ts'
import { readsOf } from './reads.ts'
import { type Stop, stopOf } from './stop.ts'
import { type CorrectionTable, correctionTable } from './table.ts'
import { type WidthTable, widthTable } from './width-table.ts'

/** The tables under the stop of one feature: by its bottom, and by its width. */
export type Tables = {
  readonly bottom: CorrectionTable | null
  readonly width: WidthTable | null
  /** Under the last measuring: how to take off metal that is still to cut. */
  readonly after: { readonly again: Again; readonly stop: Stop } | null
}
const NONE: Tables = { bottom: null, width: null, after: null }

/**
 * The tables of every feature, in the order of the plan; null where there is none. `stops: false` leaves out those under the stops: nobody measures
 * there any more.
 */
export const tablesOf = (plan: Plan, { stops = true }: { readonly stops?: boolean } = {}): readonly Tables[] =>
  plan.features.map((feature) => {
    if (feature.status === 'refused') return NONE
    const { operation, trace, before, budget } = feature
    const stop = stopOf(operation, trace)
    if (stop === null) return NONE
    const shop = {
      lathe: plan.lathe,
      setup: plan.setup,
      progress: before,
      operation,
      stop,
      reads: readsOf(feature),
      many: true,
    } as const
    const bottom = stops ? correctionTable(shop, budget, plan.units) : null
    const again = againFor(shop, trace)
    return {
      bottom,
      width: stops ? widthTable(shop, budget, plan.units, bottom?.rows.length ? bottom : null) : null,
      after: again === null ? null : { again, stop },
    }
  })
