import { GRINDER_CAUTIONS } from './handbook/grinding.ts'
import type { Plan } from './plan/plan.ts'
import { type GrindSheet, grindSheet } from './sheet/grind/grind.ts'

/** How the tools of a plan are ground. */
export const grindFor = (plan: Plan): GrindSheet => grindSheet(plan, GRINDER_CAUTIONS)
