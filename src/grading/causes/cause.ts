import type { ReadingFacts, WorkedFacts } from '../../exercise/blank.ts'

/**
 * One mistake in reasoning: what a learner gets who makes it, from the facts that stand on the sheet. It knows neither the key nor
 * what was answered. Several values where the mistake can be made in several ways; values in the units of the blank.
 */
export type Cause = {
  readonly code: string
  /** What was done, and what is to be taught again. */
  readonly says: string
  readonly teach: string
  readonly reading?: (facts: ReadingFacts) => readonly number[]
  readonly worked?: (facts: WorkedFacts) => readonly number[]
}
