import type { Form } from '../moves/form.ts'
import type { Region } from '../moves/operation.ts'

export type Verdict = 'right' | 'follow-on' | 'wrong' | 'blank' | 'ungraded'

/** One blank of one learner. */
export type GradedBlank = {
  readonly id: string
  readonly number: number
  readonly asks: string
  /** As it was written; empty where nothing was. */
  readonly given: string
  /** As the key has it, and how it is worked out. */
  readonly right: string
  readonly working: string
  readonly verdict: Verdict
  readonly marks: number
  readonly outOf: number
  /** Codes of the likely causes, and their words. */
  readonly causes: readonly string[]
  readonly says: readonly string[]
  /** What the wrong reading alone would have cut. */
  readonly wouldCut: string | null
}

/** pm; d = −radius. */
export type FormPicture = {
  readonly feature: number
  readonly name: string
  readonly before: Form
  readonly wanted: Form
  readonly cut: Form
  readonly region: Region
}

export type GradedLearner = {
  readonly sheet: string
  readonly learner: string | null
  /** Null where nothing could be graded. */
  readonly score: number | null
  readonly outOf: number
  readonly blanks: readonly GradedBlank[]
  /** What all readings together would have cut, a line a fault; empty where it is as drawn. */
  readonly cuts: readonly string[]
  /** The form that these readings cut, of each feature where it is not as drawn. */
  readonly pictures: readonly FormPicture[]
  /** Why it is not graded: no form, or none that can be read. */
  readonly note: string | null
}

/** How one question went in the class. */
export type GradedQuestion = {
  readonly asks: string
  readonly right: number
  readonly wrong: number
  readonly blank: number
  readonly causes: readonly {
    readonly code: string
    readonly says: string
    readonly teach: string
    readonly times: number
  }[]
}

export type Grades = {
  readonly title: string
  readonly learners: readonly GradedLearner[]
  readonly questions: readonly GradedQuestion[]
  /** What is to be taught again, the most frequent first. */
  readonly teach: readonly { readonly teach: string; readonly times: number }[]
}
