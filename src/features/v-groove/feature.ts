import type { AngleDimension, Degrees, Dimension } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import type { FeatureBase, Place } from '../feature.ts'

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
  /** How far the compound of a flank feed is set under half the angle, degrees. */
  readonly flankUnder: Degrees
  /** Name of the tool that roughs it in steps before its own tool finishes it; null = its own tool does all. */
  readonly roughTool: string | null
}
