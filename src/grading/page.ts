import type { Units } from '../units/length.ts'
import type { GradedLearner } from './grades.ts'

/** What one learner gets back. */
export type Page = { readonly title: string; readonly units: Units; readonly graded: GradedLearner }
