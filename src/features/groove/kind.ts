import type { Bench, Draft } from '../draft.ts'
import type { Kind } from '../kind.ts'
import { oneOffUndersize, widestToGrind } from '../shop.ts'
import { draftGroove } from './draft.ts'
import type { GrooveFeature } from './feature.ts'
import { inspectGroove } from './inspect.ts'
import { grooveSchema, readGroove } from './schema.ts'

export const groove: Kind<GrooveFeature, typeof grooveSchema> = {
  schema: grooveSchema,
  read: readGroove,
  named: 'Groove',
  stepKeys: ['from'],
  draft: draftGroove,
  inspect: inspectGroove,
  formToGrind,
}

function formToGrind(bench: Bench, { region }: Draft) {
  const width = region.to - region.from
  const under = bench.work === 'one-off' ? Math.min(oneOffUndersize(bench.units), width / 10) : 0
  return {
    width,
    aimedWidth: Math.round(Math.min(width - under, widestToGrind(bench.units))),
    severalPlaces: width - under > widestToGrind(bench.units),
  }
}
