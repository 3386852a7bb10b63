import type { Length } from '../units/length.ts'

/**
 * What a feature asks for, before the dials are considered. Places are along the work and depths below the actual
 * surface, both of the tool's reference point, ideal (not yet rounded), in pm from the zero of the operation.
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
  /** Depths at which roughing stops, ascending; empty = no roughing, the finish cuts everything. */
  readonly roughDepths: readonly Length[]
  /** The largest infeed of one pass, which also holds after rounding; null: no limit is set. */
  readonly infeed: Length | null
  /** Each wall by a plunge of its own, or both by the feed across the floor. */
  readonly walls: 'plunged' | 'swept'
  /** The deepest that one plunge goes before the tool is drawn out to clear the chip; null: as deep as it likes. */
  readonly peck: Length | null
  /** The deepest slot of the tool's own width that is cut before it is widened at the other places; null: any. */
  readonly layer: Length | null
  /** Where another tool has opened the form up: so deep this one surely meets no metal at any of its places. */
  readonly opened?: Length
}

/**
 * A corner tool: both slides rise from `-start` to 0 together by ever smaller moves; `offsets` are the distances left,
 * descending, ending in 0.
 */
export type CornerCuts = {
  readonly style: 'corner'
  /** Depth of the edge over the offset from its reference point, the virtual sharp corner. */
  readonly edgeAt: (offset: Length) => Length
  readonly radius: Length
  readonly start: Length
  readonly offsets: readonly Length[]
  /** Offset at which the work is measured before the last moves. */
  readonly measureAt: Length
}

/** A point of a form: `along` from the zero of the operation, `deep` below the surface, pm. */
export type StepPoint = { readonly along: Length; readonly deep: Length }

/**
 * A round form cut step by step with a tool that does not have its shape. Places on the dial are chosen first, then the
 * depth for each: so the form is given as functions of the place of the tool's reference point. pm.
 */
export type StepCuts = {
  readonly style: 'steps'
  /**
   * Outermost places, for which whole marks at or just beyond them may be used, and the outermost places at which the
   * tool can touch the form at all.
   */
  readonly first: Length
  readonly last: Length
  readonly touches: readonly [from: Length, to: Length]
  /** Greatest depth of the reference point. */
  readonly depth: Length
  /** Depth at which the tool touches the form at a place. */
  readonly depthAt: (place: Length) => Length
  /**
   * The top of the ridge between two neighboring places; `deep`: the depths of the tool there, if rounding makes them
   * differ from the form's.
   */
  readonly between: (near: Length, far: Length, deep?: readonly [near: Length, far: Length]) => StepPoint
  /**
   * The top of what is left before the first place used and after the last; null: the outermost places themselves are
   * used.
   */
  readonly ends: {
    readonly before: (place: Length, deep: Length) => StepPoint
    readonly after: (place: Length, deep: Length) => StepPoint
  } | null
  /** How far a point is outside the form, square to it, and how deep the form is at a place. */
  readonly outside: (point: StepPoint) => Length
  readonly formAt: (along: Length) => Length
  /** The tallest ridge allowed, and whether the job asks for it or it is the shop's default. */
  readonly cusp: Length
  readonly cuspGiven: boolean
  readonly leave: Length
  readonly infeed: Length
  /** The deepest that one plunge goes before the tool is drawn out to clear the chip. */
  readonly peck: Length
  /** Largest distance between roughing plunges; `middle`: the plunge that is cut first. */
  readonly roughSpacing: Length
  readonly middle: Length | null
  /** Depth of the edge over the offset from the reference point; the work starts at `workFrom`. */
  readonly edgeAt: (offset: Length) => Length
  readonly workFrom: Length
  /**
   * Depth at which the side of the tool is brought against the face when the zero along the work is touched off; null:
   * it is set by lines.
   */
  readonly besideFace: Length | null
  /**
   * A level floor between two round stretches, each cut step by step: the tool is fed across from one to the other at
   * this depth.
   */
  readonly floor?: { readonly from: Length; readonly to: Length; readonly depth: Length }
  /** How far roughing stays off the first and the last place. */
  readonly leaveSides?: Length
}

/**
 * A V fed in by the compound along its tailstock-side flank. A place on that line is named by its depth; there the tool
 * is that depth times `slope` past its zero. Lines beside it are for a root wider than the nose.
 */
export type FlankCuts = {
  readonly style: 'flank'
  /** Tangent of half the included angle. */
  readonly slope: number
  /**
   * The compound is set under half the angle: the runs rough, on the headstock side of the trailing flank, and each line
   * is finished by a straight plunge. Otherwise the compound finishes down the flank itself.
   */
  readonly plunged: boolean
  /** Places of the tool when it finishes the tailstock-side and the headstock-side flank. */
  readonly first: Length
  readonly last: Length
  /** Width of the nose. */
  readonly nose: Length
  /** Largest distance between overlapping lines; null: the nose leaves no floor that another line could extend. */
  readonly spacing: Length | null
  readonly depth: Length
  /** Depths at which roughing stops on every line, ascending; empty = no roughing. */
  readonly roughDepths: readonly Length[]
  /** The largest infeed of one pass, which also holds after rounding. */
  readonly infeed: Length
}

/**
 * Roughing under a form that another tool finishes: at each place in as deep as the form allows there, less what is left on it.
 */
export type StairCuts = {
  readonly style: 'stairs'
  /** From the tool's reference point the level part of its edge; behind it flanks run aside by `run` of the height. */
  readonly nose: { readonly width: Length; readonly run: number }
  /** Places of the plunges in the order of the cuts: the deepest first, then from near to far. `first`, `last`: the outermost. */
  readonly places: readonly Length[]
  readonly first: Length
  readonly last: Length
  /** The deepest at a place of the reference point, and the greatest of all. */
  readonly depthAt: (place: Length) => Length
  readonly depth: Length
  readonly infeed: Length | null
  readonly peck: Length | null
  /** The deepest slot of the tool's own width that is cut before it is widened at the other places; null: any. */
  readonly layer: Length | null
}

export type Cuts = PlungeCuts | CornerCuts | StepCuts | FlankCuts | StairCuts

/** The smaller of the limits of one bite, pm; null: none is set. */
export const biteOf = (infeed: Length | null, peck: Length | null): Length | null =>
  infeed === null || peck === null ? (infeed ?? peck) : Math.min(infeed, peck)
