import type { Dimension } from '../../units/dimension.ts'
import type { FeatureBase, Place } from '../feature.ts'

export type ConcaveFeature = FeatureBase & {
  readonly kind: 'radius'
  readonly shape: 'concave'
  readonly place: Place
  readonly radius: Dimension
  /** At least one of the two is given. */
  readonly width: Dimension | null
  readonly depth: Dimension | null
  /** Name of the square tool that roughs it in steps before its own tool finishes it; null = its own tool does all. */
  readonly roughTool: string | null
}

export type CornerFeature = FeatureBase & {
  readonly kind: 'radius'
  readonly shape: 'corner'
  /** "end" or the name of a step: its tailstock-side corner. */
  readonly cornerOf: string
  readonly radius: Dimension
}
