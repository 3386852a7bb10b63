import { budgetsOf } from '../budget/budget.ts'
import type { Bench, Draft, Refusal } from '../features/draft.ts'
import { inspectFeature } from '../features/inspect.ts'
import { edgeFormOf } from '../features/on-face.ts'
import { steppedNotes } from '../features/radius/stepped-notes.ts'
import { draftFeature, kindWords } from '../features/registry.ts'
import { roughedNotes } from '../features/rough.ts'
import { atStopOf, promised } from '../finish/at-stop.ts'
import { careFor } from '../handbook/cautions.ts'
import { expansionOf } from '../handbook/expansion.ts'
import { otherUnits } from '../job/checks/other-units.ts'
import { slender, unsaidOverhang } from '../job/checks/warnings.ts'
import type { Feature, Job } from '../job/job.ts'
import type { Setup } from '../moves/operation.ts'
import type { Prose } from '../phrase/phrase.ts'
import { about, say } from '../phrase/say.ts'
import type { FeaturePlan, Plan } from '../plan/plan.ts'
import { sideFeedWarnings } from '../plan/side-feed.ts'
import { measuredEdge, statedEdge } from '../tools/stated.ts'
import type { Length, Units } from '../units/length.ts'
import type { Features } from './features.ts'
import { groundFor } from './ground.ts'
import { clearOf, type Planned, sideFeedOf } from './one.ts'
import { paceFor } from './operation.ts'

/** The plan of a whole job, with the features in the order of work and the range of their sizes. */
export function toPlan(job: Job, bench: Bench, setup: Setup, { outcomes, reasons }: Features): Plan {
  const features = outcomes.map(
    (one): FeaturePlan =>
      'planned' in one
        ? plannedFeature(job, bench, setup, one.planned)
        : { ...refusedFeature(bench, one.feature, one.refusal), ...toGrindAnew(bench, one) },
  )
  const warnings = outcomes.flatMap((one, index) => {
    const feature = features[index]!
    if (!('planned' in one) || feature.status === 'refused') return []
    const bySide = sideFeedWarnings(job.units, job.lathe, feature.operation, feature.budget)
    return [...one.planned.warnings, ...bySide].map((each) => ({ feature: index, ...each }))
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
      ...(job.part.dog === null ? {} : { dog: job.part.dog }),
      ...grows(job.part.material.name),
      care: careFor(job.part.material.name),
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
    decision: job.decision,
    orderReasons: reasons,
    warnings: [
      ...[...job.doubts, ...otherUnits(bench), ...slender(bench), ...unsaidOverhang(bench)].map((warning) => ({
        feature: null,
        ...warning,
      })),
      ...warnings,
    ],
    setup,
  }
}

const grows = (material: string): Pick<Plan['part'], 'growth'> => {
  const growth = expansionOf(material)
  return growth === null ? {} : { growth }
}

function plannedFeature(
  job: Job,
  bench: Bench,
  setup: Setup,
  { draft, operation, trace, before, spindle }: Planned,
): FeaturePlan {
  const budgets = budgetsOf(job.lathe, setup, operation, before)
  const cut = budgets()
  const inspection = draft.roughs === undefined ? inspectFeature(bench, draft, cut) : []
  const atStop = atStopOf(job.lathe, operation, trace, cut, inspection)
  const { budget, corrects } = promised(cut, atStop, budgets)
  const { feature, tool, undersize, drawn, layout } = draft
  const notes = [
    ...draft.notes,
    ...roughedNotes(draft, trace.surely, bench.units),
    ...fineNotes(bench.units, draft.cuts.style, (draft.zero.diameter - trace.zero.diameter) / 2),
  ]
  return {
    status: 'planned',
    name: feature.name,
    kind: operation.kind,
    why: feature.why,
    drawn,
    tool: tool.name,
    edge: statedEdge(tool, edgeFormOf(draft)),
    undersize,
    spindle,
    pace: paceFor(job, operation, spindle.rpm),
    layout,
    clear: clearOf(bench.units, feature),
    sideFeed: sideFeedOf(job.lathe, feature),
    operation,
    trace,
    before,
    budget,
    ...(corrects === undefined ? {} : { corrects }),
    notes: draft.cuts.style === 'steps' ? [...notes, ...steppedNotes(draft, trace, bench.units)] : notes,
    ...(draft.roughs === undefined ? { inspection, ground: groundFor(bench, draft) } : {}),
  }
}

/** Less than this is rounding error, pm. */
const SHOWN: Length = 1000

/**
 * If the compound adds to the depth as a vernier, the machinist must know that the surface is not touched at the place
 * of the cut.
 */
const fineNotes = (units: Units, style: Draft['cuts']['style'], deeper: Length): Prose[] =>
  Math.abs(deeper) < SHOWN || style !== 'plunge'
    ? []
    : [
        say`The compound is a fine dial here: the surface is touched lightly beside the place, with it short of 0, and going forward to 0 in the clear makes the cut ${about('planned', deeper, units, 5)} deeper than the cross-feed says.`,
      ]

/** How to grind a tool that only needs to be ground differently, for the form as a tool without rake would cut it. */
function toGrindAnew(bench: Bench, { feature, refusal }: { feature: Feature; refusal: Refusal }) {
  const tool = feature.tool === null ? undefined : bench.tools[feature.tool]
  if (refusal.code !== 'ground-on-face' || tool === undefined) return {}
  const drafted = draftFeature(bench, { ...feature, tool: null })
  return drafted.ok ? { tool: tool.name, ground: groundFor(bench, { ...drafted.draft, tool }) } : {}
}

function refusedFeature(bench: Bench, feature: Feature, { code, reason, remedy }: Refusal): FeaturePlan {
  const kind = kindWords(feature)
  const tool = feature.tool === null ? undefined : bench.tools[feature.tool]
  const named = tool === undefined ? {} : { named: { tool: tool.name, edge: measuredEdge(tool) } }
  return { status: 'refused', name: feature.name, kind, code, reason, remedy, ...named, origin: feature.origin }
}
