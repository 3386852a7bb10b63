import type { Prose } from '../phrase/phrase.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import type { Shape } from './shapes.ts'

/** The spindle speed chosen, and how it was worked out. */
export type Spindle = {
  readonly rpm: number
  /** By the formula, after the form-tool factor. */
  readonly wanted: number
  readonly cuttingSpeed: number
  readonly speedUnits: 'ft/min' | 'm/min'
  readonly source: string
  readonly factor: number
  /** No speed of the lathe is low enough: do not form at this speed. */
  readonly tooFast: boolean
}

/** How fast the tool is fed into the work, and how long it rests at the bottom. */
export type Pace = {
  /** Travel in a turn of the work, pm. */
  readonly feed: Length
  /** Seconds at the bottom of a finishing cut, and how many turns of the work that is; null where a tool must not rest. */
  readonly rest: { readonly turns: number; readonly seconds: number } | null
}

/** The edge as the sheet states it; null if the shape has no such size. Lengths pm, angles degrees. */
export type StatedEdge = {
  readonly shape: Shape
  readonly width: Length | null
  readonly nose: Length | null
  readonly angle: Degrees | null
  readonly radius: Length | null
  readonly reach: Length
  readonly blank: Length | null
  readonly edgeOffset: Length | null
  readonly rakeInUse: Degrees
  /**
   * Only if rake in use makes a difference: what was gauged on the face; `angle` and `radius` are then what the edge
   * shows in the work.
   */
  readonly face?: {
    readonly angle: Degrees | null
    readonly radius: Length | null
    /** For a hollow whose quarter was stretched: its leg that goes down the work, along the face. */
    readonly leg?: Length
    /** Radius of the work at the tip of the face, for which the edge is worked out. */
    readonly floor: Length
  }
  readonly measured: boolean
}

/** Lines to scribe, from the free end, pm. `from` names the datum and `distance` is from that datum. */
export type LayoutLine = {
  readonly fromEnd: Length
  readonly from: string
  /** The step that the distance is measured from, by its name; null = the free end. */
  readonly step: string | null
  /** A second line is scribed down the face. */
  readonly downTheFace?: true
  readonly distance: Length
  readonly say: Prose
}
