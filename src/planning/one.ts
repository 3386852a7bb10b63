import type { Bench, Draft, Refusal } from '../features/draft.ts'
import type { Cutting } from '../features/feature.ts'
import { edgeFormOf, groundOnFace } from '../features/on-face.ts'
import { defaultClear, tipByDial, tipByEye } from '../features/shop.ts'
import { core, refusalOf } from '../job/checks/refusals.ts'
import { type JobWarning, warningsOf } from '../job/checks/warnings.ts'
import type { Feature, Job } from '../job/job.ts'
import type { Lathe, Scale } from '../lathe/lathe.ts'
import type { Edge } from '../moves/form.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import { isOnLine } from '../moves/placing.ts'
import type { Spindle } from '../moves/stated.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { excess, TOLERANCE } from '../replay/form/compare.ts'
import { finished, type Progress, replayNext } from '../replay/replay.ts'
import { sequence } from '../sequence/sequence.ts'
import { edgeOf } from '../tools/edge.ts'
import type { Length, Units } from '../units/length.ts'
import { notFound } from './not-found.ts'
import { operationFor, spindleFor } from './operation.ts'
import { unproven } from './unproven.ts'
import { wallsAsked } from './walls.ts'

export type Planned = {
  readonly draft: Draft
  readonly operation: Operation
  readonly trace: OperationTrace
  /** The part before this operation, and after it. */
  readonly before: Progress
  readonly after: Progress
  readonly spindle: Spindle
  readonly warnings: readonly JobWarning[]
}
export type Outcome =
  | { readonly feature: Feature; readonly planned: Planned }
  | { readonly feature: Feature; readonly refusal: Refusal }

/** One draft checked, sequenced and replayed on the part as it is; refused by the first of these that fails. */
export function planOne(
  job: Job,
  bench: Bench,
  setup: Setup,
  draft: Draft,
  angle: number,
  before: readonly Draft[],
  progress: Progress,
): Outcome {
  const feature = draft.feature
  const through = core({ bench, draft })
  if (through !== null) return { feature, refusal: through }
  const edge = edgeOf(draft.tool, edgeFormOf(draft))
  const checked = { bench, lathe: job.lathe, setup, draft, edge, before }
  const refusal = refusalOf(checked)
  if (refusal !== null) return { feature, refusal }
  const sequenced = sequence(requestFor(job, bench, draft, edge, angle))
  if (!sequenced.ok) return { feature, refusal: sequenced }
  const spindle = spindleFor(job, draft)
  const asked = { sideFeed: sideFeedOf(job.lathe, feature), clear: clearOf(job.units, feature) }
  const operation = {
    ...operationFor(draft, edge, angle, spindle, sequenced.moves),
    ...asked,
    ...passesOf(draft.cuts),
    ...wallsAsked(job.units, job.lathe, draft, edge, { angle, sideFeed: asked.sideFeed }),
  }
  const { trace, faults, after } = replayNext(job.lathe, setup, progress, operation, before.length)
  const beyond = beyondFinished(draft, operation, progress, trace)
  if (beyond !== null) return { feature, refusal: beyond }
  const failed = unproven(job.units, operation, trace, faults) ?? notFound(job.units, job.lathe, operation, trace)
  if (failed !== null) return { feature, refusal: groundOnFace(job.units, draft, failed) ?? failed }
  return {
    feature,
    planned: { draft, operation, trace, before: progress, after, spindle, warnings: warningsOf(checked, spindle) },
  }
}

/**
 * Steps are proved against the form that they may cut, which was made for them. That this is inside the form of the drawing is looked at here, on what they
 * have cut.
 */
function beyondFinished(
  { roughs }: Draft,
  operation: Operation,
  before: Progress,
  { possibly }: OperationTrace,
): Refusal | null {
  if (roughs === undefined) return null
  // What was cut before, for other features, is not looked at again.
  const over = excess(possibly, finished(before.possibly, { ...operation, wanted: roughs.form }))
  if (over === null || over.by <= TOLERANCE) return null
  return {
    code: 'outside-form',
    reason: 'the steps would cut beyond the finished form',
    remedy: 'leave rough-tool out for this feature',
  }
}

/** A corner tool goes in by ever smaller moves of its own. */
function passesOf(cuts: Draft['cuts']): Pick<Operation, 'passes'> {
  if (cuts.style === 'corner') return {}
  if (cuts.style === 'stairs') return { passes: { infeed: cuts.infeed, leave: 0 } }
  const leave = cuts.style === 'steps' ? cuts.leave : cuts.depth - (cuts.roughDepths.at(-1) ?? 0)
  return { passes: { infeed: cuts.infeed, leave } }
}

function requestFor(job: Job, bench: Bench, draft: Draft, edge: Edge, angle: number) {
  const { zero, surface, feature, cuts } = draft
  return {
    units: job.units,
    lathe: allowingMisreading(job.lathe),
    angle,
    sideFeed: sideFeedOf(job.lathe, feature),
    eye: job.lathe.accuracy.layout,
    fromEnd: zero.fromEnd,
    cuts,
    origin: feature.origin,
    clear: clearOf(job.units, feature),
    touchesBeside: isOnLine(draft.placing) && draft.touch.at !== null,
    edge: {
      from: edge.pieces[0]!.from,
      to: edge.pieces[edge.pieces.length - 1]!.to,
      deepest: cuts.style === 'corner' ? cuts.radius : 0,
    },
    heightOver: (from: number, to: number) =>
      Math.max(
        0,
        ...bench.steps
          .filter((step) => step.end > zero.fromEnd + from && step.start < zero.fromEnd + to)
          .map((step) => (step.measured - surface) / 2),
      ),
    tipOverlap: { byEye: tipByEye(job.units), byDial: tipByDial(job.units) },
  }
}

export const clearOf = (units: Units, { cutting }: Feature): Length => cutting.clear ?? defaultClear(units)

/** A carriage without a reading is brought to the lines by eye. */
export function sideFeedOf(lathe: Lathe, { cutting: { sideFeed } }: Feature): Cutting['sideFeed'] {
  return sideFeed === 'carriage' && lathe.carriage === null ? 'lines' : sideFeed
}

/**
 * The lathe as the moves are planned on it. A misreading of more than half a mark may leave the slide short when going
 * past, and over when coming back. So the lost motion is made larger by twice the reading error, less the one mark that
 * is gone past it anyway. The replay uses the lathe as it is.
 */
function allowingMisreading(lathe: Lathe): Lathe {
  const { reading } = lathe.accuracy
  if (reading === null) return lathe
  const wider = <S extends Scale>(scale: S): S =>
    scale.kind === 'dial' ? { ...scale, backlash: scale.backlash + Math.max(0, 2 * reading - scale.graduation) } : scale
  return {
    ...lathe,
    crossFeed: wider(lathe.crossFeed),
    compound: { ...lathe.compound, scale: wider(lathe.compound.scale) },
    carriage: lathe.carriage === null ? null : wider(lathe.carriage),
  }
}
