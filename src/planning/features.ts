import type { Bench, Draft, Refusal } from '../features/draft.ts'
import { draftFeature } from '../features/registry.ts'
import type { Job } from '../job/job.ts'
import { orderFeatures } from '../job/order.ts'
import { MOST_MOVES_OF_A_JOB } from '../moves/bounds.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import { say } from '../phrase/say.ts'
import { startOf } from '../replay/replay.ts'
import { byFormTool } from './by-form-tool.ts'
import { withMissingFrom } from './missing-from.ts'
import { offered } from './offered.ts'
import { type Outcome, planOne } from './one.ts'
import { openedUp, touchedClear } from './opened.ts'

/** In the order of work, with one sentence per reason for that order. */
export type Features = { readonly outcomes: readonly Outcome[]; readonly reasons: readonly string[] }

/**
 * Every feature planned and proved, or refused with its reason; a refused one does not stop the others. `without`: what is found to be refused after its steps
 * were planned; then these are left out too.
 */
export function planFeatures(job: Job, bench: Bench, setup: Setup, without: readonly Outcome[] = []): Features {
  const outcomes: Outcome[] = []
  const { drafts, refused, reasons } = draftAll(job, bench, setup, without)
  let progress = startOf(setup)
  let moves = 0
  const unroughed = new Set<number>()
  for (const { draft: asDrafted, angle } of drafts) {
    if (unroughed.has(asDrafted.feature.index)) continue
    const before = outcomes.flatMap((one) => ('planned' in one ? [one.planned.draft] : []))
    const touched = touchedClear(bench, asDrafted, before)
    const draft = touched.ok ? touched.draft : asDrafted
    const first = touched.ok
      ? planOne(job, bench, setup, draft, angle, before, progress)
      : { feature: draft.feature, refusal: touched.refusal }
    const tried = 'planned' in first ? first : offered({ job, bench, setup, draft, before, progress }, first)
    const outcome = 'planned' in tried ? withinJob(tried, moves) : tried
    if ('planned' in outcome) {
      const { planned } = outcome
      const others = byFormTool({ job, bench, setup }, planned, before, progress)
      outcomes.push(
        others.length === 0
          ? outcome
          : { ...outcome, planned: { ...planned, warnings: [...planned.warnings, ...others] } },
      )
      progress = planned.after
      moves += planned.operation.moves.length
    } else {
      outcomes.push(draft.roughs === undefined ? outcome : unroughedOf(job, outcome))
      if (draft.roughs !== undefined) unroughed.add(draft.feature.index)
    }
  }
  const opened = new Set(
    outcomes.flatMap((one) =>
      'planned' in one && one.planned.draft.roughs !== undefined ? [one.planned.draft.feature.index] : [],
    ),
  )
  const unfinished = outcomes.filter((one) => 'refusal' in one && opened.has(one.feature.index))
  if (unfinished.length > 0) return planFeatures(job, bench, setup, [...without, ...unfinished])
  return { outcomes: refused.reduce<readonly Outcome[]>(insertedInOrder, outcomes), reasons }
}

/** A form whose steps cannot be cut is not finished either: it is refused for them, once. */
const unroughedOf = (job: Job, { feature, refusal }: Extract<Outcome, { refusal: unknown }>): Outcome => ({
  feature: job.features.find(({ index }) => index === feature.index) ?? feature,
  refusal: { ...refusal, reason: say`roughing it in steps: ${refusal.reason}` },
})

/** A sheet that nobody finishes, and that no list of moves would hold, is no help: the rest is another job. */
const withinJob = (outcome: Extract<Outcome, { planned: unknown }>, before: number): Outcome => {
  const all = before + outcome.planned.operation.moves.length
  if (all <= MOST_MOVES_OF_A_JOB) return outcome
  const refusal: Refusal = {
    code: 'too-many-moves',
    reason: say`with the features before it the job would have ${all} moves of the hand, more than ${MOST_MOVES_OF_A_JOB}`,
    remedy: 'make two jobs of it: the features from this one on in a job of their own',
  }
  return { feature: outcome.feature, refusal }
}

/** The operations that can be done, in their order. */
export const operationsOf = ({ outcomes }: Features): readonly Operation[] =>
  outcomes.flatMap((one) => ('planned' in one ? [one.planned.operation] : []))

/** A feature refused before planning is put before the first one that the job names after it. */
function insertedInOrder(outcomes: readonly Outcome[], refused: Outcome): Outcome[] {
  const at = outcomes.findIndex((one) => one.feature.index > refused.feature.index)
  return at < 0 ? [...outcomes, refused] : outcomes.toSpliced(at, 0, refused)
}

function draftAll(job: Job, bench: Bench, setup: Setup, without: readonly Outcome[]) {
  const refused: Outcome[] = [...without]
  const drafts: { draft: Draft; angle: number }[] = []
  for (const feature of job.features) {
    if (without.some((one) => one.feature.index === feature.index)) continue
    const drafted = draftFeature(bench, feature)
    const opened = drafted.ok ? openedUp(bench, drafted.draft) : null
    if (opened !== null && !opened.ok) refused.push({ feature, refusal: opened.refusal })
    else if (drafted.ok)
      drafts.push(
        ...(opened === null ? [drafted.draft] : [opened.steps, opened.after]).map((draft) => ({
          draft,
          angle: draft.angle ?? feature.cutting.compoundAngle ?? job.lathe.compound.angle,
        })),
      )
    else refused.push({ feature, refusal: withMissingFrom(job, bench, setup, feature, drafted.refusal) })
  }
  const ordered = orderFeatures(drafts)
  return { drafts: ordered.entries, refused, reasons: ordered.reasons }
}
