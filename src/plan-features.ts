import type { Budgeted } from './budget/budgeted.ts'
import type { Bench, Draft, Refusal } from './features/draft.ts'
import type { Cutting } from './features/feature.ts'
import { inspectFeature } from './features/inspect.ts'
import { groundOnFace, standsIn } from './features/on-face.ts'
import { steppedNotes } from './features/radius/stepped-notes.ts'
import { draftFeature } from './features/registry.ts'
import { defaultClear, tipOverlap } from './features/shop.ts'
import { groundFor } from './ground.ts'
import { findMaterial } from './handbook/materials.ts'
import { spindleSpeed } from './handbook/spindle.ts'
import { otherUnits } from './job/checks/other-units.ts'
import { refusalOf } from './job/checks/refusals.ts'
import { type Said, slender, warningsOf } from './job/checks/warnings.ts'
import type { Feature, Job } from './job/job.ts'
import { orderFeatures } from './job/order.ts'
import type { Edge } from './moves/form.ts'
import type { Operation, Setup } from './moves/operation.ts'
import type { Spindle } from './moves/stated.ts'
import type { OperationTrace } from './moves/trace.ts'
import { type Progress, replayNext, startOf } from './replay/replay.ts'
import { sequence } from './sequence/sequence.ts'
import type { FeaturePlan, Plan } from './sheet/plan.ts'
import { sideFeedWarnings } from './side-feed-words.ts'
import { edgeOf } from './tools/edge.ts'
import { measuredEdge, statedEdge } from './tools/stated.ts'
import { formatLength } from './units/format.ts'
import type { Length, Units } from './units/length.ts'
import { unproven } from './unproven.ts'

type Planned = {
  readonly draft: Draft
  readonly operation: Operation
  readonly trace: OperationTrace
  readonly after: Progress
  readonly spindle: Spindle
  readonly warnings: readonly Said[]
}
type Outcome =
  | { readonly feature: Feature; readonly planned: Planned }
  | { readonly feature: Feature; readonly refusal: Refusal }

/** Every feature planned and proved, or refused with its reason; a refused one does not take the others with it. */
export function planFeatures(
  job: Job,
  bench: Bench,
  setup: Setup,
): { operations: readonly Operation[]; toPlan(budgets: readonly (readonly Budgeted[])[]): Plan } {
  const outcomes: Outcome[] = []
  const operations: Operation[] = []
  const { drafts, refused, reasons } = draftAll(job, bench)
  let progress = startOf(setup)
  for (const { draft, angle } of drafts) {
    const before = outcomes.flatMap((one) => ('planned' in one ? [one.planned.draft] : []))
    const outcome = planOne(job, bench, setup, draft, angle, before, progress)
    if ('planned' in outcome) {
      operations.push(outcome.planned.operation)
      progress = outcome.planned.after
    }
    outcomes.push(outcome)
  }
  const all = refused.reduce<readonly Outcome[]>(inItsPlace, outcomes)
  return { operations, toPlan: (budgets) => toPlan(job, bench, setup, all, budgets, reasons) }
}

/** A feature refused before planning stands before the first one that the job names after it. */
function inItsPlace(outcomes: readonly Outcome[], refused: Outcome): Outcome[] {
  const at = outcomes.findIndex((one) => one.feature.index > refused.feature.index)
  return at < 0 ? [...outcomes, refused] : outcomes.toSpliced(at, 0, refused)
}

function draftAll(job: Job, bench: Bench) {
  const refused: Outcome[] = []
  const drafts: { draft: Draft; angle: number }[] = []
  for (const feature of job.features) {
    const drafted = draftFeature(bench, feature)
    if (drafted.ok)
      drafts.push({
        draft: drafted.draft,
        angle: drafted.draft.angle ?? feature.cutting.compoundAngle ?? job.lathe.compound.angle,
      })
    else refused.push({ feature, refusal: drafted.refusal })
  }
  const ordered = orderFeatures(drafts)
  return { drafts: ordered.entries, refused, reasons: ordered.reasons }
}

function planOne(
  job: Job,
  bench: Bench,
  setup: Setup,
  draft: Draft,
  angle: number,
  before: readonly Draft[],
  progress: Progress,
): Outcome {
  const feature = draft.feature
  const edge = edgeOf(draft.tool, standsIn(draft))
  const checked = { bench, lathe: job.lathe, setup, draft, edge, before }
  const refusal = refusalOf(checked)
  if (refusal !== null) return { feature, refusal }
  const sequenced = sequence(requestFor(job, bench, draft, edge, angle))
  if (!sequenced.ok) return { feature, refusal: sequenced }
  const spindle = spindleFor(job, draft)
  const stepped = sequenced.cusp === undefined ? {} : { cusp: sequenced.cusp }
  const zero = { ...draft.zero, diameter: draft.zero.diameter - 2 * (sequenced.deeper ?? 0) }
  const operation = { ...operationFor(draft, edge, angle, spindle, sequenced.moves), ...stepped, zero }
  const { trace, faults, after } = replayNext(job.lathe, setup, progress, operation, before.length)
  const failed = unproven(job.units, operation, trace, faults)
  if (failed !== null) return { feature, refusal: groundOnFace(job.units, draft, failed) ?? failed }
  return { feature, planned: { draft, operation, trace, after, spindle, warnings: warningsOf(checked, spindle) } }
}

function requestFor(job: Job, bench: Bench, draft: Draft, edge: Edge, angle: number) {
  const { zero, surface, feature, cuts } = draft
  return {
    units: job.units,
    lathe: job.lathe,
    angle,
    sideFeed: sideFeedOf(job, draft),
    eye: job.lathe.accuracy.layout,
    fromEnd: zero.fromEnd,
    cuts,
    origin: feature.origin,
    clear: feature.cutting.clear ?? defaultClear(job.units),
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
    tipOverlap: tipOverlap(job.units),
  }
}

/** A carriage that shows no reading is brought to the lines by eye. */
function sideFeedOf({ lathe }: Job, { feature }: Draft): Cutting['sideFeed'] {
  const { sideFeed } = feature.cutting
  return sideFeed === 'carriage' && lathe.carriage === null ? 'lines' : sideFeed
}

function spindleFor(job: Job, draft: Draft): Spindle {
  const { speedUnits, source } = job.part.material
  const carbide = draft.tool.bit === 'carbide' ? (findMaterial(job.part.material.name)?.carbideFactor ?? 1) : 1
  const cuttingSpeed = job.part.material.cuttingSpeed * carbide
  const factor = draft.feature.cutting.speedFactor ?? 0.5
  const chosen = spindleSpeed({
    cuttingSpeed,
    speedUnits,
    diameter: draft.surface,
    factor,
    speeds: job.lathe.spindleSpeeds,
  })
  return { rpm: chosen.rpm, wanted: chosen.wanted, tooFast: chosen.tooFast, cuttingSpeed, speedUnits, source, factor }
}

function operationFor(draft: Draft, edge: Edge, angle: number, spindle: Spindle, moves: Operation['moves']): Operation {
  const { feature, surface, zero, wanted, region, dimensions, placedBy } = draft
  const kind = feature.kind === 'radius' ? `${feature.shape} radius` : feature.kind
  return {
    feature: feature.index,
    name: feature.name,
    kind,
    origin: feature.origin,
    toolName: draft.tool.name,
    edge,
    angle,
    surface,
    zero,
    wanted,
    region,
    dimensions,
    rpm: spindle.rpm,
    placedBy,
    moves,
  }
}

function toPlan(
  job: Job,
  bench: Bench,
  setup: Setup,
  outcomes: readonly Outcome[],
  budgets: readonly (readonly Budgeted[])[],
  reasons: readonly string[],
): Plan {
  let done = 0
  const features = outcomes.map(
    (one): FeaturePlan =>
      'planned' in one
        ? plannedFeature(bench, one.planned, budgets[done++]!)
        : { ...refusedFeature(bench, one.feature, one.refusal), ...toGrindAnew(bench, one) },
  )
  const warnings = outcomes.flatMap((one, feature) => {
    if (!('planned' in one)) return []
    const planned = outcomes.slice(0, feature).filter((other) => 'planned' in other).length
    const { operation, warnings: said } = one.planned
    const bySide = sideFeedWarnings(job.units, job.lathe, operation, budgets[planned]!)
    return [...said, ...bySide].map((each) => ({ feature, ...each }))
  })
  return {
    title: job.title,
    drawingNumber: job.drawingNumber,
    units: job.units,
    lathe: job.lathe,
    part: {
      material: job.part.material.name,
      held: job.part.held,
      overhang: job.part.overhang,
      steps: bench.steps.map((step) => ({
        name: step.name,
        diameter: step.diameter.aim,
        measured: step.measured,
        measuredGiven: step.measuredGiven,
        from: step.start,
        to: step.end,
      })),
    },
    features,
    orderReasons: reasons,
    warnings: [...[...otherUnits(bench), ...slender(bench)].map((said) => ({ feature: null, ...said })), ...warnings],
    setup,
  }
}

function plannedFeature(
  bench: Bench,
  { draft, operation, trace, spindle }: Planned,
  budgeted: readonly Budgeted[],
): FeaturePlan {
  const { feature, tool, undersize, drawn, layout, align, touch } = draft
  const notes = [...draft.notes, ...fineNotes(bench.units, (draft.zero.diameter - operation.zero.diameter) / 2)]
  return {
    status: 'planned',
    name: feature.name,
    kind: operation.kind,
    why: feature.why,
    drawn,
    tool: tool.name,
    edge: statedEdge(tool, standsIn(draft)),
    undersize,
    spindle,
    layout,
    align,
    touch,
    operation,
    trace,
    budget: budgeted,
    notes: draft.cuts.style === 'steps' ? [...notes, ...steppedNotes(draft, trace, bench.units)] : notes,
    inspection: inspectFeature(bench, draft, budgeted),
    ground: groundFor(bench, draft),
  }
}

/** Where the compound adds to the depth as a vernier, the hand must know that the surface is not touched at the place of the cut. */
const fineNotes = (units: Units, deeper: Length): string[] =>
  deeper === 0
    ? []
    : [
        `The compound is a fine dial here: the surface is touched lightly beside the place, with it short of 0, and going forward to 0 in the clear makes the cut ${formatLength(deeper, units, { digits: 5 })} deeper than the cross-feed says.`,
      ]

/** A tool that only has to be ground otherwise is told how, for the form as a tool without rake would cut it. */
function toGrindAnew(bench: Bench, { feature, refusal }: { feature: Feature; refusal: Refusal }) {
  const tool = feature.tool === null ? undefined : bench.tools[feature.tool]
  if (refusal.code !== 'ground-on-face' || tool === undefined) return {}
  const drafted = draftFeature(bench, { ...feature, tool: null })
  return drafted.ok ? { tool: tool.name, ground: groundFor(bench, { ...drafted.draft, tool }) } : {}
}

function refusedFeature(bench: Bench, feature: Feature, { code, reason, remedy }: Refusal): FeaturePlan {
  const kind = feature.kind === 'radius' ? `${feature.shape} radius` : feature.kind
  const tool = feature.tool === null ? undefined : bench.tools[feature.tool]
  const named = tool === undefined ? {} : { named: { tool: tool.name, edge: measuredEdge(tool) } }
  return { status: 'refused', name: feature.name, kind, code, reason, remedy, ...named, origin: feature.origin }
}
