import type { Given } from '../diagnostics/given.ts'
import type { Bench, Drafted } from './draft.ts'
import type { Feature, FeatureBase } from './feature.ts'
import { groove } from './groove/kind.ts'
import type { Kind } from './kind.ts'
import { radius } from './radius/kind.ts'
import { vGroove } from './v-groove/kind.ts'

/** Every kind of feature, in the order in which they are listed: a new one is a folder and an entry here. */
export const KINDS = { groove, radius, 'v-groove': vGroove } as const

// The compiler cannot see that a feature, or a mapping of a file, belongs to the kind it names: it is asserted here,
// and nowhere else.

export const kindOf = <F extends Feature>(feature: F): Kind<F, never> =>
  KINDS[feature.kind] as unknown as Kind<F, never>

/** Null if the feature lacks something it needs; the reason has then been reported. */
export const readAs = (kind: keyof typeof KINDS, given: Given<object>, base: FeatureBase): Feature | null => {
  const read = KINDS[kind].read as unknown as (given: Given<object>, base: FeatureBase) => Feature | null
  return read(given, base)
}

export const draftFeature = (bench: Bench, feature: Feature): Drafted => kindOf(feature).draft(bench, feature)

/** What the sheet calls the kind of a feature. */
export const kindWords = (feature: Feature): string => kindOf(feature).called?.(feature) ?? feature.kind
