import type { Origin } from '../diagnostics/diagnostic.ts'
import type { AngleDimension, Degrees, Dimension } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

/** The `cutting:` keys, the feature's own over the job's; null = not given. Lengths are slide travel in pm. */
export type Cutting = {
  readonly leave: Length | null
  readonly leaveSides: Length | null
  readonly infeed: Length | null
  readonly clear: Length | null
  readonly overlap: Length | null
  readonly speedFactor: number | null
  readonly cusp: Length | null
  readonly sideFeed: 'compound' | 'carriage' | 'lines'
  readonly compoundAngle: Degrees | null
  readonly order: number | null
}

/** Where a feature stands: from the free end or the tailstock-side end of a step (`from`), to its near edge, far edge or center. */
export type Place = { readonly by: 'near' | 'far' | 'center'; readonly distance: Dimension; readonly from: string }

export type FeatureBase = {
  readonly index: number
  readonly name: string
  readonly why: string | null
  /** Name of a tool in the toolbox; null = plan with the tool to grind. */
  readonly tool: string | null
  readonly cutting: Cutting
  readonly origin: Origin
}
export type GrooveFeature = FeatureBase & {
  readonly kind: 'groove'
  readonly place: Place
  readonly width: Dimension
  /** Exactly one of the two is given. */
  readonly depth: Dimension | null
  readonly bottomDiameter: Dimension | null
  /** Between walls and floor; "max" reaches down to 0. */
  readonly cornerRadius: Dimension | null
}
export type ConcaveFeature = FeatureBase & {
  readonly kind: 'radius'
  readonly shape: 'concave'
  readonly place: Place
  readonly radius: Dimension
  /** At least one of the two is given. */
  readonly width: Dimension | null
  readonly depth: Dimension | null
}
export type CornerFeature = FeatureBase & {
  readonly kind: 'radius'
  readonly shape: 'corner'
  /** "end" or the name of a step: its tailstock-side corner. */
  readonly cornerOf: string
  readonly radius: Dimension
}
export type VGrooveFeature = FeatureBase & {
  readonly kind: 'v-groove'
  readonly place: Place
  readonly angle: AngleDimension
  readonly width: Dimension | null
  /** Diameter at which `width` is given; null = at the nominal surface. */
  readonly widthAt: Length | null
  readonly depth: Dimension | null
  readonly bottomDiameter: Dimension | null
  readonly root: Dimension | null
  /** How it is fed in: straight, or by the compound along the tailstock-side flank. */
  readonly method: 'plunge' | 'flank-feed'
}
export type Feature = GrooveFeature | ConcaveFeature | CornerFeature | VGrooveFeature
