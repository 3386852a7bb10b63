import type { Prose } from '../phrase/phrase.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

/** One change of the job: where the edge is on the blank of the tool, or a key of the feature. */
export type Change = {
  readonly edgeOffset?: Length
  readonly compoundAngle?: Degrees
  readonly sideFeed?: 'compound' | 'carriage'
  readonly cusp?: Length
}

/**
 * What may help, in words, and as a change that can be planned: it is offered only if the feature can be planned with
 * it.
 */
export type Offer = { readonly say: Prose; readonly change: Change }

/**
 * What to do about a refusal: `remedy` as it is, or after those of the offers that could be planned; `lead` goes before
 * them all.
 */
export type Remedy = {
  readonly remedy: Prose
  readonly lead?: Prose
  readonly offers?: readonly Offer[]
}
