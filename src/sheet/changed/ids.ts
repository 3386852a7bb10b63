import { identify } from '../../phrase/figure.ts'
import type { Change, Changed } from '../sheet.ts'

/** Gives every figure of the list an id that is unique on the sheet. */
export const withIds = ({ facts, features }: Changed): Changed => ({
  facts: facts.map((fact, i) => named(fact, `changed.fact.${i + 1}`)),
  features: features.map((feature, f) => {
    const place = `changed.feature.${f + 1}`
    return {
      ...feature,
      facts: feature.facts.map((fact, i) => named(fact, `${place}.fact.${i + 1}`)),
      steps: feature.steps.map((step, i) => named(step, `${place}.step.${i + 1}`)),
      sizes: feature.sizes.map((size, i) => named(size, `${place}.size.${i + 1}`)),
    }
  }),
})

const named = <T extends Change>(change: T, place: string): T => ({
  ...change,
  before: change.before === null ? null : identify(`${place}.before`, change.before),
  now: change.now === null ? null : identify(`${place}.now`, change.now),
})
