import type { Bench, Refusal } from '../features/draft.ts'
import { edgeFormOf } from '../features/on-face.ts'
import { draftFeature } from '../features/registry.ts'
import { refusalOf } from '../job/checks/refusals.ts'
import type { Feature, Job } from '../job/job.ts'
import type { Setup } from '../moves/operation.ts'
import { say } from '../phrase/say.ts'
import { edgeOf } from '../tools/edge.ts'

/**
 * A place that counts from the free end and is not there may count from a step that the job does not name. The steps
 * that it can be cut from are tried, and named in the remedy; if there are none, the remedy is unchanged.
 */
export function withMissingFrom(job: Job, bench: Bench, setup: Setup, feature: Feature, refusal: Refusal): Refusal {
  if (!MISPLACED.includes(refusal.code) || !('place' in feature) || feature.place.from !== 'end') return refusal
  const { place } = feature
  const fitting = bench.steps
    .filter(({ start }) => start > 0)
    .filter(({ name }) => canBeCut(job, bench, setup, { ...feature, place: { ...place, from: name } }))
    .map(({ name }) => `from: ${name}`)
  if (fitting.length === 0) return refusal
  const ways = fitting.length === 1 ? fitting[0]! : `${fitting.slice(0, -1).join(', ')} or ${fitting.at(-1)}`
  return {
    ...refusal,
    reason: say`${refusal.reason}; its place counts from the free end`,
    remedy: say`if it counts from a step, write ${ways}; otherwise ${refusal.remedy}`,
  }
}

const MISPLACED = ['off-the-part', 'crosses-a-step']

function canBeCut(job: Job, bench: Bench, setup: Setup, feature: Feature): boolean {
  const drafted = draftFeature(bench, feature)
  if (!drafted.ok) return false
  const { draft } = drafted
  const edge = edgeOf(draft.tool, edgeFormOf(draft))
  return refusalOf({ bench, lathe: job.lathe, setup, draft, edge, before: [] }) === null
}
