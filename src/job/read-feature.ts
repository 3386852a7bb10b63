import type * as z from 'zod/mini'
import type { Origin } from '../diagnostics/diagnostic.ts'
import type { AsRead, Given } from '../diagnostics/given.ts'
import { type cuttingSchema, mergeCutting } from '../features/common-schema.ts'
import type { Feature, FeatureBase } from '../features/feature.ts'
import { KINDS, readAs } from '../features/registry.ts'
import { INCH, type Length } from '../units/length.ts'
import type { featureSchema } from './schema.ts'

export type FeatureRead = AsRead<z.output<typeof featureSchema>>
export type CuttingRead = AsRead<z.output<typeof cuttingSchema>>
/** Returns what the reader found for a mapping. */
export type GivenLookup = <T extends object>(values: T) => Given<T>

/** Null if the feature lacks something it needs; the reason has then been reported. */
export const readFeature = (
  values: FeatureRead,
  index: number,
  name: string,
  jobCutting: CuttingRead | undefined,
  givenOf: GivenLookup,
): Feature | null => {
  const origin: Origin = givenOf(values).origin
  const base: FeatureBase = {
    index,
    name,
    why: values.why ?? null,
    tool: values.tool ?? null,
    cutting: mergeCutting(jobCutting, { ...values.cutting, ...withoutUndefined(values) }),
    origin,
  }
  twice(values, givenOf)
  if (values.cutting) saneCutting(values.cutting, givenOf)
  saneCutting(values, givenOf)
  return values.kind === undefined ? null : readAs(values.kind, givenOf(values), base)
}

/** A ridge of more than a 64th is no form that a file could make of it. Common practice, no source. */
const MOST_CUSP: Length = INCH / 64

/** What no form that is stepped along may be left like. */
export const saneCutting = (values: CuttingRead, givenOf: GivenLookup): void => {
  if (values.cusp === undefined || values.cusp <= MOST_CUSP) return
  givenOf(values).report(
    'cusp',
    'impossible',
    'a ridge of more than a 64th of an inch is no form any more',
    'give 0.0005 to 0.005 in (0.01 to 0.1 mm), or leave it out',
  )
}

const withoutUndefined = (values: FeatureRead): CuttingRead =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as CuttingRead

/** A cutting key given both beside the feature's keys and under its `cutting`. */
const twice = (values: FeatureRead, givenOf: GivenLookup): void => {
  if (!values.cutting) return
  const own = givenOf(values)
  const gathered = givenOf(values.cutting)
  for (const key of Object.keys(values.cutting) as (keyof CuttingRead)[])
    if (own.has(key))
      gathered.report(key, 'too-many-keys', `${key} is given twice for this feature`, 'keep one of the two')
}

/** Names for features without a name: their kind and a number, counted by kind, that no other feature has. */
export const featureNames = (features: readonly (FeatureRead | undefined)[]): string[] => {
  const taken = new Set(features.map((feature) => feature?.name))
  const counts = new Map<string, number>()
  return features.map((feature) => {
    const kind = feature?.kind === undefined ? 'Feature' : KINDS[feature.kind].named
    let counted = (counts.get(kind) ?? 0) + 1
    while (feature?.name === undefined && taken.has(`${kind} ${counted}`)) counted++
    counts.set(kind, counted)
    return feature?.name ?? `${kind} ${counted}`
  })
}
