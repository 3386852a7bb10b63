import type { Dimension } from '../../units/dimension.ts'
import type { FeatureBase, Place } from '../feature.ts'

export type GrooveFeature = FeatureBase & {
  readonly kind: 'groove'
  readonly place: Place
  readonly width: Dimension
  /** Exactly one of the two is given. */
  readonly depth: Dimension | null
  readonly bottomDiameter: Dimension | null
  /** Between walls and floor; "max" allows down to 0. */
  readonly cornerRadius: Dimension | null
  /** How its walls are finished; null: by its limits and its width. */
  readonly walls: 'plunged' | 'swept' | null
}
