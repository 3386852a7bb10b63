import type { Instrument } from '../moves/operation.ts'

/** A finished dimension with what the machinist cannot help. pm, or degrees for an angle. */
export type Budgeted = {
  readonly id: Instrument
  readonly planned: number
  readonly low: number
  readonly high: number
  readonly rss: number
  readonly limits: readonly [number, number] | null
  readonly verdict: 'holds' | 'may not hold' | 'no limits given'
  /** Least distance from low/high to a limit; negative when it may not hold; null without limits. */
  readonly spare: number | null
  /** The largest single cause: "layout line", "touching off", "reading the cross-feed", … */
  readonly worstCause: string
}
