import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Degrees, Dimension } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import type { KINDS } from './registry.ts'

export type { GrooveFeature } from './groove/feature.ts'
export type { ConcaveFeature, CornerFeature } from './radius/feature.ts'
export type { VGrooveFeature } from './v-groove/feature.ts'

/** The `cutting:` keys, the feature's own over the job's; null = not given. Lengths are slide travel in pm. */
export type Cutting = {
  readonly leave: Length | null
  readonly leaveSides: Length | null
  readonly infeed: Length | null
  readonly peck: Length | null
  readonly clear: Length | null
  readonly overlap: Length | null
  readonly speedFactor: number | null
  readonly cusp: Length | null
  readonly sideFeed: 'compound' | 'carriage' | 'lines'
  readonly compoundAngle: Degrees | null
  readonly order: number | null
}

/**
 * Where a feature is: from the free end or the tailstock-side end of a step (`from`), to its near edge, far edge or
 * center.
 */
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

/** A feature of any kind, as the readers of the kinds return it. */
export type Feature = NonNullable<ReturnType<(typeof KINDS)[keyof typeof KINDS]['read']>>
