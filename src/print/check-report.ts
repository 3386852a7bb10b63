import type { Code } from '../diagnostics/codes.ts'
/** The result of each job that was checked, neutral. */
export type CheckReport = {
  readonly jobs: readonly CheckedJob[]
  /** Files that are not jobs. */
  readonly skipped: readonly string[]
}

export type Verdict = 'good' | 'may not hold' | 'refused' | 'unreadable'

export type CheckedJob = {
  readonly file: string
  readonly verdict: Verdict
  readonly features: readonly CheckedFeature[]
  readonly problems: readonly {
    readonly code: Code
    readonly severity: string
    readonly file: string
    readonly path: readonly (string | number)[]
    readonly message: string
    readonly hint: string | null
  }[]
  /** All problems, refusals and warnings with their lines, as they are told on standard error. */
  readonly found: readonly Found[]
  /** Compared with the sheet that was kept; null if this was not requested, or nothing is planned. */
  readonly against: Compared | null
}

export type Found = {
  readonly code: Code
  readonly severity: 'error' | 'warning'
  readonly file: string
  readonly line: number | null
  readonly column: number | null
  readonly message: string
  readonly hint: string | null
}

/** How the kept sheet of a job compares with today's plan. */
export type Compared = {
  readonly outcome: 'same' | 'different' | 'missing' | 'unreadable'
  readonly lines: readonly string[]
}

/** What it is called where every result has a code. */
export const KEPT_CODES: Readonly<Record<Exclude<Compared['outcome'], 'same'>, Code>> = {
  different: 'kept-different',
  missing: 'kept-missing',
  unreadable: 'kept-unreadable',
}

export type CheckedFeature = {
  readonly name: string
  readonly kind: string
  readonly status: 'planned' | 'refused'
  /** Sizes that may not hold, and a spindle too fast for forming; none for a refused feature. */
  readonly mayNotHold: readonly { readonly id: string; readonly label: string }[]
  readonly refusal: { readonly code: Code; readonly reason: string; readonly remedy: string } | null
}

/** How a verdict is colored, if it is. */
export type Paint = Readonly<Record<Verdict, (text: string) => string>>

/** A job whose kept sheet differs (or is missing, if one is requested) is not counted as good. */
export const countsAsGood = ({ verdict, against }: CheckedJob): boolean =>
  verdict !== 'good' || against === null || against.outcome === 'same'

export const countOf = ({ jobs }: CheckReport, wanted: Verdict): number =>
  jobs.filter((each) => each.verdict === wanted && countsAsGood(each)).length
