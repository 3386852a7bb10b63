import type { Plan } from '../../src/plan/plan.ts'
import type { Shop } from '../../src/written/written.ts'

/** What the words of a list refer to, of a planned job. */
export const shopOf = (plan: Plan): Shop => ({
  lathe: plan.lathe,
  units: plan.units,
  features: plan.features.map(({ name }) => name),
})
