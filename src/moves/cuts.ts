import type { Length } from '../units/length.ts'

/**
 * What a feature asks for, before any dial is thought of. Places are along the work and depths below the actual surface, both of the
 * tool's reference point, ideal (not yet rounded), in pm from the zero of the operation.
 */
export type PlungeCuts = {
  readonly style: 'plunge'
  /** Places of the roughing plunges, ascending. */
  readonly roughPlaces: readonly Length[]
  /** The finish goes from `first` to `last`; equal = one place. */
  readonly first: Length
  readonly last: Length
  /** Largest distance between overlapping finish plunges, for a swung compound that cannot feed across. */
  readonly spacing: Length
  readonly depth: Length
  /** Depths that roughing stops at, ascending; empty = no roughing, the finish does all. */
  readonly roughDepths: readonly Length[]
}

/** A corner tool: both slides rise from `-start` to 0 together by ever smaller moves; `offsets` are the distances still to go, descending, ending in 0. */
export type CornerCuts = {
  readonly style: 'corner'
  readonly radius: Length
  readonly start: Length
  readonly offsets: readonly Length[]
  /** Offset at which the work is measured before the last moves. */
  readonly measureAt: Length
}

export type Cuts = PlungeCuts | CornerCuts
