import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import type { Shape } from './shapes.ts'

export type AngleRange = readonly [low: Degrees, high: Degrees]
export type LengthRange = readonly [low: Length, high: Length]

/**
 * What a tool is ground to for one form, and the result. Lengths pm, angles degrees; `null` if the shape has no such
 * size.
 */
export type GrindFacts = {
  readonly tool: string
  readonly shape: Shape
  readonly bit: 'hss' | 'carbide'
  readonly measured: boolean
  readonly work: 'one-off' | 'repeat'
  /** Smallest stock square that carries the edge, or the tool's own. */
  readonly blank: { readonly square: Length; readonly given: boolean; readonly fromMemory: boolean } | null
  /**
   * Square: the groove (null if the tool steps along another form), the aim when the tool is ground, and the measured
   * width of the edge.
   */
  readonly width: { readonly drawn: Length | null; readonly aim: Length; readonly edge: Length } | null
  /** A groove wider than any edge is ground for. */
  readonly severalPlaces: boolean
  /** Flat at the nose of a V. */
  readonly nose: Length | null
  readonly cornerRadius: Length | null
  /** Depth of the ground end as the toolbox gives it. */
  readonly reach: Length
  readonly holderAngle: Degrees
  readonly rakeGround: Degrees
  readonly rakeInUse: Degrees
  readonly rakeAdvice: RakeAdvice
  readonly endRelief: { readonly use: AngleRange; readonly ground: AngleRange; readonly tilted: AngleRange }
  readonly sides: SideFacts
  readonly form: FormFacts
  readonly gauge: GaugeFacts | null
}

type RakeAdvice = {
  readonly forming: AngleRange | null
  readonly formingSource: string
  readonly turning: AngleRange | null
  readonly turningSource: string | null
}

export type SideFacts = {
  readonly relief: AngleRange
  readonly reliefInUse: AngleRange
  /** Clearance straight back from the edge; a flank of a V has none, because it widens. */
  readonly back: AngleRange | null
  readonly backInUse: AngleRange | null
  /** If less than a degree may be left: what to grind instead. */
  readonly backNeeded: Degrees | null
}

/** The form compared with what is ground on the face. */
export type FormFacts = {
  readonly feature: string
  readonly depth: Length
  readonly surface: Length
  /** Length along the face from the tip to the surface. */
  readonly face: Length
  /** Height of a nearby step that the sides must pass as well. */
  readonly shoulder: Length
  /** How far back the sides are relieved, along the face. */
  readonly sidesReach: LengthRange
  /** `face` measured square to the front of the tool, at the middle of the end relief. */
  readonly squareToFront: Length
  /** How much too shallow the work is when a tool ground to the drawing reaches the surface as the drawing has it. */
  readonly shallow: Length
  readonly vee: {
    readonly half: Degrees
    readonly ground: Degrees
    readonly cut: Degrees
    /** How far the flank is from straight, in depth. */
    readonly strays: Length
  } | null
  readonly round: {
    readonly radius: Length
    readonly ground: Length
    /** How far it cuts beside the circle between bottom and edges, in depth. */
    readonly strays: Length
    readonly width: Length
    readonly cut: { readonly width: Length; readonly radius: Length }
  } | null
  /**
   * Legs of a hollow quarter: along the work, and down the face as ground; and as cut when it is ground to the drawing.
   */
  readonly corner: {
    readonly radius: Length
    readonly down: Length
    readonly cutDown: Length
    /**
     * With rake in use: the circles nearest to the hollow to grind, and to the cut of a hollow ground to the drawing.
     */
    readonly arc: {
      readonly radius: Length
      readonly strays: Length
      readonly cutsRadius: Length
      readonly cutsStray: Length
    } | null
    /** From the deep end, evenly over the quarter; none without rake. */
    readonly points: readonly {
      readonly along: Length
      readonly work: Length
      readonly face: Length
      readonly uncorrected: Length
    }[]
  } | null
}

export type GaugeFacts = {
  readonly radius: Length
  readonly label: string
  /** Radius to grind minus the gauge. */
  readonly off: Length
  readonly source: string
}
