import type { Bench, Draft, Drafted, Refusal } from '../features/draft.ts'
import { draftFeature } from '../features/registry.ts'
import type { Feature, Job } from '../job/job.ts'
import type { Change } from '../moves/offer.ts'
import type { Setup } from '../moves/operation.ts'
import { joinedBy, say } from '../phrase/say.ts'
import type { Progress } from '../replay/replay.ts'
import { type Outcome, planOne } from './one.ts'
import { openedUp, samePart } from './opened.ts'

/** The input with which a refused feature was planned, so that it can be planned again. */
export type Tried = {
  readonly job: Job
  readonly bench: Bench
  readonly setup: Setup
  readonly draft: Draft
  readonly before: readonly Draft[]
  readonly progress: Progress
}

/**
 * The refusal with those of its offers that could be planned when tried; an offer that would be refused again is left
 * out.
 */
export function offered(tried: Tried, { feature, refusal }: { feature: Feature; refusal: Refusal }): Outcome {
  const { offers = [], lead = '', ...plain } = refusal
  const held = offers.filter(({ change }) => plans(tried, change)).map(({ say }) => say)
  return { feature, refusal: { ...plain, remedy: say`${lead}${joinedBy(', or ', [...held, plain.remedy])}` } }
}

const plans = (tried: Tried, change: Change): boolean => {
  const { job, bench, setup, draft, before, progress } = tried
  const { feature } = draft
  const own = { ...draft.tool, edgeOffset: change.edgeOffset ?? draft.tool.edgeOffset }
  const tools = feature.tool === null ? bench.tools : { ...bench.tools, [feature.tool]: own }
  const changed = withKeys(feature, change)
  const drafted = drafts(tried, { ...bench, tools }, change, changed)
  if (!drafted.ok) return false
  const angle = drafted.draft.angle ?? changed.cutting.compoundAngle ?? job.lathe.compound.angle
  return 'planned' in planOne(job, { ...bench, tools }, setup, drafted.draft, angle, before, progress)
}

/** What is opened up by another tool is drafted as a whole, and of it the part that was tried. */
const drafts = ({ job, draft }: Tried, bench: Bench, change: Change, changed: Feature): Drafted => {
  const whole = job.features.find(({ index }) => index === draft.feature.index)
  const drafted = draftFeature(
    bench,
    draft.roughs === undefined || whole === undefined ? changed : withKeys(whole, change),
  )
  const opened = drafted.ok ? openedUp(bench, drafted.draft) : null
  return opened === null ? drafted : samePart(opened, draft)
}

const withKeys = (feature: Feature, { compoundAngle, sideFeed, cusp }: Change): Feature => ({
  ...feature,
  cutting: {
    ...feature.cutting,
    ...(compoundAngle === undefined ? {} : { compoundAngle }),
    ...(sideFeed === undefined ? {} : { sideFeed }),
    ...(cusp === undefined ? {} : { cusp }),
  },
})
