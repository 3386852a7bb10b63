import type { FeaturePlan, Plan } from './plan/plan.ts'
import type { SlipCard } from './sheet/sheet.ts'
import { slipCards } from './sheet/slips.ts'
import { slipsOf } from './slips/slips.ts'

/** What common mistakes on a plan would measure. */
export const slipsFor = (plan: Plan): readonly SlipCard[] =>
  slipCards(plan, slipsOf(plan.lathe, plan.setup, plan.features.flatMap(operationIn)))

const operationIn = (feature: FeaturePlan) => (feature.status === 'planned' ? [feature.operation] : [])
