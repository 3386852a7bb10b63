import type { Length } from '../units/length.ts'
import type { HideWord } from './words.ts'

/** One path of the job, and what stands there in turn. */
export type Vary =
  | { readonly path: string; readonly how: 'list'; readonly values: readonly string[] }
  | { readonly path: string; readonly how: 'range'; readonly range: Range }
  | {
      readonly path: string
      readonly how: 'under' | 'over'
      readonly of: string
      readonly range: Range
    }
export type Range = { readonly from: string; readonly to: string; readonly step: string }

/** Somebody who gets a sheet; `own`: values of the job that are only theirs, by path. */
export type Learner = {
  readonly name: string | null
  readonly own: ReadonlyMap<string, string>
  /** The table that says so. */
  readonly from?: string
}

/** An exercise as read. */
export type Exercise = {
  readonly title: string
  readonly teaches: string
  readonly seed: string
  readonly learners: readonly Learner[]
  readonly vary: readonly Vary[]
  readonly hide: readonly HideWord[]
  /** pm; null: the usual one of each blank. */
  readonly tolerance: Length | null
}
