import type { ReadingFacts } from '../../exercise/blank.ts'
import { solve } from '../../exercise/solve.ts'

/** The reading of another travel on the same dial. pm. */
export const readingOf = (facts: ReadingFacts, travel: number): number => solve({ ...facts, travel }) as number
