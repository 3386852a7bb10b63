import type { Degrees } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'
import type { Instruments } from './instruments.ts'

/**
 * Facts only. Nothing in this folder turns a reading into travel: the planner and the replay each do that for
 * themselves.
 */
type Sense = 'depth' | 'diameter'

/** A graduated dial. `graduation`, `perTurn` and `backlash` are in pm of reading, in the dial's own sense. */
export type Dial = {
  readonly kind: 'dial'
  readonly units: Units
  readonly graduation: Length
  readonly perTurn: Length
  readonly reads: Sense
  readonly backlash: Length
  /**
   * The part of a graduation that can be judged by eye: 1, 1/2, 1/4 … The count of a move is in units of graduation ×
   * readTo.
   */
  readonly readTo: number
}

/** A digital readout: a resolution, no turns, no lost motion. */
type Readout = {
  readonly kind: 'readout'
  readonly units: Units
  readonly resolution: Length
  readonly reads: Sense
  /** Range of the plunger of a dial indicator that bears on the slide itself; absent on a readout. */
  readonly range?: Length
}

export type Scale = Dial | Readout

type Compound = {
  readonly scale: Scale
  /** Degrees from parallel with the ways, −90 < angle ≤ 90. */
  readonly angle: Degrees
  /** Greatest minus smallest reading, pm; null if the file gives none. */
  readonly travel: Length | null
  readonly scaleZero: 'parallel' | 'square'
}

/**
 * Half-widths of the errors that the machinist cannot avoid. `reading: null` means half of what can be read on each
 * dial. Lengths in pm, angles in degrees.
 */
export type Accuracy = {
  readonly reading: Length | null
  readonly touchOff: Length
  readonly layout: Length
  readonly tool: Length
  readonly stock: Length
  readonly runout: Length
  /**
   * Degrees. For a compound set by the marks of its swivel; for one set parallel or square and checked with an
   * indicator; for the angle of a V tool.
   */
  readonly swivel: Degrees
  readonly trued: Degrees
  readonly toolAngle: Degrees
}

export type Lathe = {
  readonly name: string
  readonly units: Units
  readonly crossFeed: Scale
  /** The slide has a stop that is set where it stands, and that it comes back in against. */
  readonly crossFeedStop?: true
  readonly compound: Compound
  readonly carriage: Scale | null
  /** rpm, ascending. */
  readonly spindleSpeeds: readonly number[]
  readonly jawClearance: Length
  /** The longest edge that cuts at once in mild steel without chatter; absent: the default of the units. */
  readonly widestEdge?: Length
  readonly accuracy: Accuracy
  /** What sizes are taken with; absent: the usual ones. */
  readonly instruments?: Instruments
}

/** The smallest step that can be read on a scale, pm of reading (graduation × read-to, or a readout's resolution). */
export const readable = (scale: Scale): Length =>
  scale.kind === 'dial' ? scale.graduation * scale.readTo : scale.resolution
