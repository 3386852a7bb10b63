import { budgetOf } from '../budget/budget.ts'
import type { Budgeted } from '../budget/budgeted.ts'
import type { Operation } from '../moves/operation.ts'
import { isOnLine } from '../moves/placing.ts'
import type { Prose } from '../phrase/phrase.ts'
import { together } from '../phrase/say.ts'
import type { Code, Continues, FeaturePlan, Plan } from '../plan/plan.ts'
import { sideFeedWarnings } from '../plan/side-feed.ts'
import type { Progress } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import { assumedInShort, continuesFrom } from './assumed.ts'
import { believed, doubtful, otherTool } from './doubt.ts'
import type { Shop } from './measured.ts'
import { onOutside } from './outside.ts'
import type { Paper } from './paper.ts'
import { readsOf } from './reads.ts'
import { remainingFor, type Taken } from './remaining.ts'
import { roughedFirst } from './rough-first.ts'
import { senseless } from './senseless.ts'
import { cutPlan, type NotCut, type Source } from './source.ts'
import { type Stop, stopOf } from './stop.ts'
import { correctionTable } from './table.ts'
import { turnsShort } from './turns-short.ts'
import { widthTable } from './width-table.ts'
import { floorThere, notesOf, refusedBy } from './words.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/** The whole plan, with one feature as it is after its bottom was measured. Only its moves after the stop remain, with the step numbers of the sheet. */
export type Remains = {
  readonly plan: Plan
  readonly index: number
  /** Null if nothing can be done any more. */
  readonly stop: Stop | null
  /** About the sheet that was cut, if it is known; absent if it does not fit the job. */
  readonly cut?: { readonly identity: string | null; readonly continues: Continues }
}

/** What remains of one feature, planned from what was measured and replayed, or refused. */
export const whatRemains = (today: Plan, index: number, taken: Taken, source: Source = { how: 'job' }): Remains => {
  const cut = cutPlan(today, index, source)
  if (!cut.ok) return only(today, index, refusedFor(today.features[index]!, cut), null)
  const remains = remainingOf(cut.plan, index, taken)
  const { continues, says } = continuesFrom(today, cut, index, stepsBefore(cut.plan, index))
  const feature = remains.plan.features[index]!
  const told: FeaturePlan =
    feature.status === 'refused'
      ? { ...feature, remedy: together([feature.remedy, assumedInShort(today, cut, index)]) }
      : { ...feature, notes: [...says, ...feature.notes] }
  const features = remains.plan.features.with(index, told)
  return { ...remains, plan: { ...remains.plan, features }, cut: { identity: cut.identity, continues } }
}

const refusedFor = (feature: FeaturePlan, { code, reason, remedy }: NotCut): FeaturePlan => {
  const { name, kind } = feature
  const origin = feature.status === 'planned' ? feature.operation.origin : feature.origin
  return { status: 'refused', name, kind, code, reason, remedy, origin }
}

const remainingOf = (plan: Plan, index: number, taken: Taken): Remains => {
  const feature = plan.features[index]!
  if (feature.status === 'refused') return only(plan, index, feature, null)
  const stop = stopOf(feature.operation, feature.trace)
  if (stop === null) return only(plan, index, refusedBy(plan.units, feature, taken, null), null)
  const progress = feature.before
  const written: Shop = {
    lathe: plan.lathe,
    setup: plan.setup,
    progress,
    operation: feature.operation,
    stop,
    reads: readsOf(feature),
  }
  const shop = onOutside(written, taken.outside)
  const nonsense = senseless(plan.units, shop, taken)
  if (nonsense !== null) return only(plan, index, { ...refusedBy(plan.units, feature, taken, null), ...nonsense }, null)
  const paper = paperOf(plan, shop, feature)
  const plain = remainingFor(shop, taken, paper)
  const past = !plain.ok && plain.why === 'past'
  const short = past ? null : turnsShort(plan.units, stepsBefore(plan, index), shop, feature, taken.bottom)
  if (short !== null) return only(plan, index, { ...refusedBy(plan.units, feature, taken, null), ...short }, null)
  const doubt = past ? null : doubtful(plan.units, feature, shop.stop, taken, paper)
  if (doubt !== null) return only(plan, index, { ...refusedBy(plan.units, feature, taken, null), ...doubt }, null)
  const { found, added } = plain.ok ? roughedFirst(shop, taken.bottom, plain) : { found: plain, added: 0 }
  if (!found.ok) return only(plan, index, refusedBy(plan.units, feature, taken, found, shop), null)
  const { findings, operation, trace } = found
  const changed: Planned = {
    ...feature,
    edge: otherEdge(feature, findings.wider),
    undersize: feature.undersize === null ? null : feature.undersize - findings.wider,
    operation,
    trace,
    budget: budgetAfter(plan, feature, shop.progress, operation),
    gains: [],
    notes: [
      ...notesOf(plan, index, taken, findings, stop, added),
      ...believed(plan.units, feature, findings, taken),
      ...floorThere(plan.units, taken.bottom, trace),
      ...feature.notes,
    ],
  }
  // What feeding along by the carriage costs is told for this width, not for the planned one.
  const along = sideFeedWarnings(plan.units, plan.lathe, operation, changed.budget)
  const warnings = [
    ...plan.warnings.filter(({ feature: of, code }) => of !== index || !ALONG.has(code)),
    ...along.map((said) => ({ feature: index, ...said })),
  ]
  return only({ ...plan, warnings }, index, changed, { stop, says: otherTool(plan.units, feature, findings, taken) })
}

/** The tables under the stop as on the sheet, for the outside diameter as measured. */
const paperOf = (plan: Plan, shop: Shop, { budget: budgeted }: Planned): Paper => {
  const bottom = correctionTable(shop, budgeted, plan.units)
  const rows = bottom === null || bottom.rows.length === 0 ? null : bottom
  return { bottom, width: widthTable(shop, budgeted, plan.units, rows) }
}

const stepsBefore = (plan: Plan, index: number): number =>
  plan.features
    .slice(0, index)
    .reduce((sum, one) => sum + (one.status === 'planned' ? one.operation.moves.length : 0), 0)

const ALONG: ReadonlySet<Code> = new Set<Code>(['rests-on-the-eye', 'coarse-carriage'])

const PLAN_ONLY: ReadonlySet<Code> = new Set<Code>(['may-not-hold', 'finer-than-dial'])

const only = (
  plan: Plan,
  index: number,
  feature: FeaturePlan,
  from: { readonly stop: Stop; readonly says: readonly Prose[] } | null,
): Remains => {
  const doubted = (from?.says ?? []).map((say) => ({ feature: index, code: 'other-tool' as const, say }))
  // Changes that would have helped the whole plan are not offered after part of it is cut.
  const warnings = [...doubted, ...plan.warnings].filter(
    ({ feature: of, code }) => (of === null || of === index) && !(from !== null && PLAN_ONLY.has(code)),
  )
  return {
    plan: { ...plan, features: plan.features.with(index, feature), warnings },
    index,
    stop: from?.stop ?? null,
  }
}

const otherEdge = ({ edge }: Planned, wider: Length): Planned['edge'] => {
  if (wider === 0) return edge
  if (edge.shape === 'round') return { ...edge, radius: edge.radius === null ? null : edge.radius + wider }
  return edge.shape === 'vee'
    ? { ...edge, nose: edge.nose === null ? null : edge.nose + wider }
    : { ...edge, width: edge.width === null ? null : edge.width + wider }
}

/**
 * Once the bottom is measured, the errors of touching off and runout no longer count. What is left in depth: the error of measuring the bottom (of
 * the instrument that takes it, otherwise as for the stock) and of the readings. If the place along the work was found by touch too, that error stays in, also for the depth.
 */
const budgetAfter = (plan: Plan, feature: Planned, progress: Progress, operation: Operation): readonly Budgeted[] => {
  const { accuracy } = plan.lathe
  const touchOff = isOnLine(operation.placing)
    ? (readsOf(feature).bottom?.within ?? accuracy.stock) / 2
    : accuracy.touchOff
  const lathe = { ...plan.lathe, accuracy: { ...accuracy, touchOff, runout: 0 } }
  const budgeted = budgetOf(lathe, plan.setup, operation, { surely: progress.surely, possibly: progress.surely })
  if (!isOnLine(operation.placing)) return budgeted
  return budgeted.map((one) => (one.worstCause === 'touch-off' ? { ...one, worstCause: 'bottom' } : one))
}
