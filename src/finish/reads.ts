import type { Taken } from '../moves/inspection.ts'
import type { FeaturePlan } from '../plan/plan.ts'
import type { Length } from '../units/length.ts'

/** How each size is taken at the stop; null: nothing at hand takes it, or it is not corrected; absent: it is not known with what. */
export type Reads = { readonly bottom?: Taken | null; readonly width?: Taken | null }

/** It is corrected only by a reading that is surer than the cut alone. */
export const worthReading = (taken: Taken | null | undefined, sum: Length): boolean =>
  taken === undefined || (taken !== null && taken.within < sum)

export const readsOf = (feature: FeaturePlan): Reads => {
  const inspection = feature.status === 'planned' ? (feature.inspection ?? []) : []
  const corrects = feature.status === 'planned' ? feature.corrects : undefined
  const of = (id: string, corrected = true): Taken | null | undefined =>
    corrected ? inspection.find((check) => check.id === id)?.by : null
  const [bottom, width] = [of('bottomDiameter', corrects?.bottom), of('width', corrects?.width)]
  return { ...(bottom === undefined ? {} : { bottom }), ...(width === undefined ? {} : { width }) }
}
