import type * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import type { Check } from '../moves/inspection.ts'
import type { FormToCut } from '../tools/grind/facts.ts'
import type { Bench, Draft, Drafted } from './draft.ts'
import type { FeatureBase } from './feature.ts'
import type { Inspected } from './inspection.ts'

/** All that the program needs to know about one kind of feature. */
export type Kind<F extends FeatureBase, S extends z.ZodMiniType> = {
  readonly schema: S
  /** Null if the feature lacks something it needs; the reason has then been reported. */
  readonly read: (given: Given<AsRead<z.output<S>>>, base: FeatureBase) => F | null
  /** The name of a feature without a name, before its number. */
  readonly named: string
  /** What the sheet calls the kind; left out: by its word. */
  readonly called?: (feature: F) => string
  /** Its keys that name a step of the part. */
  readonly stepKeys: readonly string[]
  readonly draft: (bench: Bench, feature: F) => Drafted
  /** How the finished feature is inspected: instruments, planned sizes, limits. */
  readonly inspect: (inspected: Inspected, feature: F) => Check[]
  /** The form that its tool is ground for, besides the depth. */
  readonly formToGrind?: (bench: Bench, draft: Draft, feature: F) => Partial<FormToGrind>
}

type FormToGrind = Pick<FormToCut, 'width' | 'aimedWidth' | 'severalPlaces' | 'shoulder' | 'half' | 'radius'>
