import type { Budgeted } from '../budget/budgeted.ts'
import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Job } from '../job/job.ts'
import { joinedBy, say } from '../phrase/say.ts'
import type { FeaturePlan, Gain, Plan } from '../plan/plan.ts'
import { type Change, changesFor } from './changes.ts'
import { warningOf } from './words.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/**
 * What would make the features hold that may not: the same job with one thing changed, planned, replayed and budgeted
 * again. Nothing is proposed that was not tried, or that gains nothing. A job that holds takes no extra time.
 */
export const withGains = (job: Job, plan: Plan, planOf: (job: Job) => Plan): Plan => {
  const failing = plan.features.filter((feature): feature is Planned => feature.status === 'planned' && fails(feature))
  const coarse = plan.features.filter(
    (feature): feature is Refused => feature.status === 'refused' && feature.code === 'no-reading',
  )
  if (failing.length + coarse.length === 0) return plan
  const indexes = new Set([
    ...failing.map((feature) => feature.operation.feature),
    ...job.features
      .filter((one) => coarse.some(({ origin }) => samePlace(origin, one.origin)))
      .map(({ index }) => index),
  ])
  const tried = changesFor(job, failing).map((change) => ({ change, plan: planOf(changed(job, [change], indexes)) }))
  const together = new Map<string, Plan>()
  const gainsOf = (feature: Planned): Gain[] => {
    const gained = tried.filter((one) => gains(feature, sameIn(one.plan, feature)))
    const single = gained.map((one) => gainOf([one.change], feature, sameIn(one.plan, feature)!))
    if (gained.length < 2 || single.some((gain) => gain.holds)) return single
    const changes = gained.map((one) => one.change)
    const key = changes.map((change) => change.id).join(' ')
    const all = together.get(key) ?? planOf(changed(job, changes, indexes))
    together.set(key, all)
    const both = sameIn(all, feature)
    return gains(feature, both) ? [...single, gainOf(changes, feature, both!)] : single
  }
  const features = plan.features.map((feature) => {
    if (feature.status === 'refused') return coarse.includes(feature) ? withFinerDial(feature, tried) : feature
    return fails(feature) ? { ...feature, gains: gainsOf(feature) } : feature
  })
  const warnings = features.flatMap((feature, index) =>
    feature.status === 'planned' && fails(feature) ? [warningOf(job, feature, index)] : [],
  )
  return { ...plan, features, warnings: [...plan.warnings, ...warnings] }
}

type Refused = Extract<FeaturePlan, { status: 'refused' }>

/**
 * If no mark is within the limits: what was tried and can be planned then goes before the advice that was not tried.
 */
const withFinerDial = (feature: Refused, tried: readonly { change: Change; plan: Plan }[]): Refused => {
  const planned = tried.filter(({ plan }) =>
    plan.features.some((one) => one.status === 'planned' && samePlace(one.operation.origin, feature.origin)),
  )
  if (planned.length === 0) return feature
  const ways = planned.map(({ change }) => change.set)
  return {
    ...feature,
    remedy: say`${joinedBy(', or ', ways)}: planned and replayed so, the plan comes within the limits`,
  }
}

const samePlace = (one: Origin, other: Origin): boolean =>
  one.file === other.file && one.path.join('/') === other.path.join('/')

/** A size that the replayed form has, and that may be beyond its limits. */
const failed = (one: Budgeted): boolean => one.verdict === 'may not hold' && one.spare !== null

const fails = (feature: Planned): boolean => feature.budget.some(failed)

const changed = (job: Job, changes: readonly Change[], indexes: ReadonlySet<number>): Job =>
  changes.reduce((before, change) => change.make(before, indexes), job)

const sameIn = (plan: Plan, { operation }: Planned): Planned | null =>
  plan.features.find(
    (one): one is Planned => one.status === 'planned' && one.operation.feature === operation.feature,
  ) ?? null

/**
 * True if at least one size that may not hold is less beyond its limits by a tenth, none is further beyond, and none
 * that held is lost.
 */
const gains = (feature: Planned, other: Planned | null): boolean => {
  if (other === null) return false
  const pairs = feature.budget.map((one) => [one, other.budget.find(({ id }) => id === one.id)] as const)
  const lost = pairs.some(([one, then]) => one.verdict === 'holds' && then?.verdict !== 'holds')
  const better = pairs.some(([one, then]) => failed(one) && spareOf(then) > spareOf(one) * 0.9 + SAME)
  const worse = pairs.some(([one, then]) => failed(one) && spareOf(then) < spareOf(one) - SAME)
  return better && !lost && !worse
}

const spareOf = (one: Budgeted | undefined): number => one?.spare ?? Number.NEGATIVE_INFINITY
/** Rounding error, pm. */
const SAME = 1

const gainOf = (changes: readonly Change[], feature: Planned, other: Planned): Gain => {
  const better = (one: Budgeted): boolean =>
    feature.budget.some(({ id, spare }) => id === one.id && spareOf(one) > (spare ?? 0) + SAME)
  const ids = new Set(feature.budget.filter(failed).map(({ id }) => id))
  return {
    change: changes.map(({ id }) => id),
    say: changes.map(({ say }) => say),
    set: changes.map(({ set }) => set),
    sizes: other.budget.filter((one) => ids.has(one.id) && better(one)),
    holds: other.budget.every(({ verdict }) => verdict !== 'may not hold'),
  }
}
