/** What became of jobs that were checked, neutral. */
export type CheckReport = {
  readonly jobs: readonly CheckedJob[]
  /** Files that are no jobs. */
  readonly skipped: readonly string[]
}

export type Verdict = 'good' | 'may not hold' | 'refused' | 'unreadable'

export type CheckedJob = {
  readonly file: string
  readonly verdict: Verdict
  readonly features: readonly CheckedFeature[]
  readonly problems: readonly {
    readonly code: string
    readonly severity: string
    readonly file: string
    readonly path: readonly (string | number)[]
    readonly message: string
    readonly hint: string | null
  }[]
  /** Against the sheet that is kept; null where it is not asked for, or nothing is planned. */
  readonly against: Compared | null
}

/** How the sheet that is kept of a job compares with what is planned today. */
export type Compared = {
  readonly outcome: 'same' | 'different' | 'missing' | 'unreadable'
  readonly lines: readonly string[]
}

export type CheckedFeature = {
  readonly name: string
  readonly kind: string
  readonly status: 'planned' | 'refused'
  /** Sizes that may not hold, and a spindle too fast to form at; none for a refused feature. */
  readonly mayNotHold: readonly { readonly id: string; readonly label: string }[]
  readonly refusal: { readonly code: string; readonly reason: string; readonly remedy: string } | null
}

/** How a verdict is colored, where it is. */
export type Paint = Readonly<Record<Verdict, (text: string) => string>>

/** A job whose sheet on the wall is another one (or that has none there, where one is asked for) is not counted as good. */
export const counted = ({ verdict, against }: CheckedJob): boolean =>
  verdict !== 'good' || against === null || against.outcome === 'same'

export const countOf = ({ jobs }: CheckReport, wanted: Verdict): number =>
  jobs.filter((each) => each.verdict === wanted && counted(each)).length
