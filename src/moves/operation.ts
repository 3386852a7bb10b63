import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import type { Edge, Form } from './form.ts'
import type { Placing, Touch } from './placing.ts'

export type Slide = 'cross-feed' | 'compound' | 'carriage'

type DialAction =
  | 'take-up'
  | 'zero'
  | 'feed-in'
  | 'back-out'
  | 'shift'
  | 'go-past'
  | 'return'
  | 'feed-across'
  | 'move-carriage'
type HandAction =
  | 'layout'
  | 'fit-tool'
  | 'swing'
  | 'set-speed'
  | 'start'
  | 'stop'
  | 'align'
  | 'touch-off'
  | 'lock'
  | 'unlock'
  | 'measure'
  | 'deburr'
export type Action = DialAction | HandAction

/** Why a move is made, for the words of the sheet only; the replay never reads it. */
export type Purpose =
  | 'approach'
  | 'rough'
  | 'finish'
  | 'clear'
  | 'clear-chip'
  | 'clear-to-measure'
  | 'come-back'
  | 'square-shoulder'
  | 'to-place'
  | 'take-out-floor'
  | 'alternate'
  | 'chamfer'
  | 'burr'
  | 'only-tip'
  | 'expect-rough'
  | 'expect-finish'
  | 'set-up'
  | 'tailstock-line'
  | 'headstock-line'
  | 'between-lines'

/**
 * One action of the machinist. On a dial, `count` is the absolute reading in readable steps (see `readable`) from that
 * dial's zero; null for a take-up before its zero, where `takeUp` says how many readable steps forward, at least.
 * `zero` sets the slide's dial to 0 at its present place. `touch-off` names the slide that is fed forward until it
 * touches. `place` instead of a count: the carriage is moved by eye until the tool's reference point is there, pm from
 * the free end.
 */
export type Move = {
  readonly action: Action
  readonly slide?: Slide
  readonly count?: number | null
  readonly takeUp?: number
  readonly place?: Length
  readonly purpose?: Purpose
  readonly origin: Origin
}

/** What an inspector measures of a finished form. Lengths in pm, angles in degrees. */
export type Instrument =
  | 'width' // along the work, between the two walls where the form meets the surface `surface`, or at `atDiameter`
  | 'depth' // radial, from `surface` to the deepest point of the form
  | 'bottomDiameter' // smallest diameter in the form
  | 'near'
  | 'far'
  | 'center' // distance from the free end to the tailstock-side edge at the surface, headstock-side edge, their middle
  | 'root' // width of the flat bottom
  | 'angle' // included angle between the two flanks, degrees
  | 'flatness' // highest minus lowest point of the floor
  | 'radius' // circle through the edges at the surface and the deepest point (concave), or the arc of a corner
  | 'cornerRadius' // of the fillets between the walls and the floor, both together
  | 'legAlong'
  | 'legDown' // corner radius: from the virtual corner along the cylinder, and down the face, to where the form leaves them

export type WantedDimension = {
  readonly id: Instrument
  /** Aim of the plan, pm or degrees. */
  readonly aim: number
  readonly limits: readonly [number, number] | null
  /** Measure the width at this diameter instead of at the surface. */
  readonly atDiameter?: Length
  /** On a bottom diameter: the form is defined by it, not by a depth below the measured surface. */
  readonly fixed?: boolean
  /**
   * On the tailstock-side edge, if the drawing does not give it but another edge or the middle: which one, and its
   * place, pm.
   */
  readonly drawn?: { readonly id: 'far' | 'center'; readonly aim: Length }
}

/** The place a feature occupies: where the inspector looks. */
export type Region = { readonly from: Length; readonly to: Length }

/** One feature, cut with one tool at one compound angle. All lengths pm. `wanted` and `start` have d = −radius. */
export type Operation = {
  /** Index of the feature in the job. */
  readonly feature: number
  readonly name: string
  readonly kind: string
  readonly origin: Origin
  readonly toolName: string
  readonly edge: Edge
  /** Compound angle in degrees from parallel. */
  readonly angle: Degrees
  /** Actual (measured) diameter of the surface that the feature is cut in. */
  readonly surface: Length
  /**
   * How the tool is brought to its place along the work, and what it touches: the instructions to the machinist. The
   * replay finds for itself where the zeros then are.
   */
  readonly placing: Placing
  readonly touch: Touch
  /** Lines that are scribed on the work for this operation, pm from the free end. */
  readonly lines: readonly Length[]
  /**
   * Assumed error of the set-up: the tool really is this much further toward the headstock than its place, and was this
   * much deeper when it seemed to touch. pm. A plan has none; the error budget and `finish` assume it.
   */
  readonly off?: { readonly along: Length; readonly deep: Length }
  /**
   * The zero comes from a measured bottom, not from a touch on the work: where the edge overlapped, nothing was cut.
   */
  readonly zeroMeasured?: boolean
  /**
   * The finished form inside `region`, from the drawing's dimensions, d = −radius. Outside the region the work stays as
   * it was.
   */
  readonly wanted: Form
  /**
   * The part of the wanted form that must be cut at least, if the drawing leaves something open; left out, all of it.
   */
  readonly atLeast?: Form
  readonly region: Region
  readonly dimensions: readonly WantedDimension[]
  readonly rpm: number
  /**
   * What the job names to move the tool along the work; left out, the compound. A dial counts for the limits of the
   * marks only if the job names it.
   */
  readonly sideFeed?: 'compound' | 'carriage' | 'lines'
  /** Radial clearance at back-out that the job, or the shop's default, asks for, pm; left out, any. */
  readonly clear?: Length
  /** Each wall is to be finished by a plunge of its own, and the floor cleaned away from it; left out, any way. */
  readonly walls?: 'plunged'
  /**
   * The deepest that one plunge may go before the tool is drawn out to clear the chip, if the job limits it, pm; left
   * out, by the width of the edge.
   */
  readonly peck?: Length
  /**
   * For a form cut step by step: the tallest ridge that the job allows, or the shop's default if the job gives none,
   * pm.
   */
  readonly cusp?: { readonly most: Length; readonly given: boolean }
  /**
   * The most that one pass may take (null: no limit is set), and what roughing leaves for the finish, pm. The replay
   * never reads it.
   */
  readonly passes?: { readonly infeed: Length | null; readonly leave: Length }
  readonly moves: readonly Move[]
}

/** The whole part before any cut: d = −radius, measured diameters; and the obstacles. */
export type Setup = {
  readonly stock: Form
  /**
   * Distance from the free end to the chuck's jaws, or to the dog; null between centers if the job does not give the
   * dog.
   */
  readonly jaws: Length | null
  /** There is a center at the free end: no part of the tool may be at z < 0. */
  readonly tailstockCenter: boolean
}
