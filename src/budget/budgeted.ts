import type { Instrument } from '../moves/operation.ts'

/** A finished dimension with the errors that a machinist cannot avoid. pm, or degrees for an angle. */
export type Budgeted = {
  readonly id: Instrument
  readonly planned: number
  readonly low: number
  readonly high: number
  readonly rss: number
  readonly limits: readonly [number, number] | null
  readonly verdict: 'holds' | 'may not hold' | 'no limits given'
  /** Smallest distance from low or high to a limit; negative if it may miss the tolerance; null without limits. */
  readonly spare: number | null
  /** The largest single cause. */
  readonly worstCause: CauseName
  /**
   * The same, measured and corrected at the stop: verdict and spare are of this; `low`, `high`, `rss` and `worstCause`
   * above are without measuring all the same. `better`: its worst case is less than without measuring.
   */
  readonly measured?: {
    readonly low: number
    readonly high: number
    readonly rss: number
    readonly worstCause: CauseName
    readonly better: boolean
  }
}

/** The errors; their names on paper are in plan/labels.ts. */
export type CauseName =
  | 'reading-cross-feed'
  | 'reading-compound'
  | 'reading-carriage'
  | 'tailstock-line'
  | 'headstock-line'
  | 'place-by-eye'
  | 'touch-off'
  | 'layout'
  | 'tool'
  | 'tool-angle'
  | 'swivel'
  | 'stock'
  | 'runout'
  | 'bottom' // measured, where the zero was found so
  | 'width' // measured, where the feed across was found so
  | 'marks' // what is corrected is corrected by whole marks
  | 'none' // nothing that is stated changes it
  | 'no-size' // the replayed form does not have it
