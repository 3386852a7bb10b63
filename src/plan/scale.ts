import type { Scale } from '../lathe/lathe.ts'
import type { Slide } from '../moves/operation.ts'
import type { Plan } from './plan.ts'

/** Null if the carriage has no dial. */
export const scaleOf = (plan: Plan, slide: Slide): Scale | null => {
  if (slide === 'cross-feed') return plan.lathe.crossFeed
  return slide === 'compound' ? plan.lathe.compound.scale : plan.lathe.carriage
}
