import { budgetOf } from '../budget/budget.ts'
import type { Move, Slide } from '../moves/operation.ts'
import type { Prose } from '../phrase/phrase.ts'
import { say } from '../phrase/say.ts'
import { identityOf } from '../plan/identity.ts'
import type { Code, Continues, FeaturePlan, Plan } from '../plan/plan.ts'
import { type Progress, replayNext, startOf } from '../replay/replay.ts'
import { stopOf } from './stop.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/** How the moves up to the stop are known: as the job plans them now, roughed to a given reading, or from a sheet that was kept. */
export type Source =
  | { readonly how: 'job' }
  | { readonly how: 'reading'; readonly count: number }
  /** `moves`: the moves of each feature that was planned then, by its name, in order. */
  | { readonly how: 'kept'; readonly identity: string | null; readonly moves: ReadonlyMap<string, readonly Move[]> }
  /** The sheet that was kept relies on other facts than the job has now; each in words. */
  | { readonly how: 'other'; readonly differs: readonly string[] }

/** The plan whose moves were cut; what remains is planned from it. */
export type CutPlan = {
  readonly ok: true
  readonly plan: Plan
  readonly identity: string | null
  readonly from: Continues['from']
}
export type NotCut = { readonly ok: false; readonly code: Code; readonly reason: Prose; readonly remedy: Prose }

export const cutPlan = (plan: Plan, index: number, source: Source): CutPlan | NotCut => {
  const identity = identityOf(plan)
  if (source.how === 'job') return { ok: true, plan, identity, from: 'job' }
  if (source.how === 'reading') {
    const feature = plan.features[index]!
    const other = feature.status === 'refused' ? null : roughedTo(feature, source.count)
    const moved = other === null ? plan : replayed(plan, new Map([[feature.name, other]]), index)
    return { ok: true, plan: moved, identity: identityOf(moved) === identity ? identity : null, from: 'reading' }
  }
  return source.how === 'other' ? notCut(source.differs.join('; ')) : fromKept(plan, index, source)
}

/** Where the last roughing pass stops. If places have readings of their own: the deepest of them. */
export type Roughed = {
  readonly slide: Slide
  /** In readable steps. */
  readonly count: number
  readonly index: number
  /** The furthest reading of the finish. */
  readonly finish: number
}

/** Null where there is no stop. */
export const roughedAt = (feature: FeaturePlan): Roughed | null => {
  if (feature.status === 'refused') return null
  const stop = stopOf(feature.operation, feature.trace)
  if (stop === null) return null
  const { moves } = feature.operation
  const finish = Math.max(...stop.finishes.map((index) => moves[index]!.count!))
  return moves.reduce<Roughed | null>(
    (deepest, move, index) =>
      index < stop.at && isRough(move, stop.by) && (deepest === null || move.count! > deepest.count)
        ? { slide: stop.by, count: move.count!, index, finish }
        : deepest,
    null,
  )
}

const isRough = ({ action, slide, purpose, count }: Move, by: Slide): boolean =>
  action === 'feed-in' && slide === by && purpose === 'rough' && typeof count === 'number'

/** Moves every roughing pass by as much as the last one. The form at the stop is the same as if only the last one were moved. */
const roughedTo = (feature: Planned, count: number): readonly Move[] | null => {
  const written = roughedAt(feature)
  const by = written === null ? 0 : count - written.count
  if (written === null || by === 0) return null
  return feature.operation.moves.map((move) =>
    isRough(move, written.slide) ? { ...move, count: move.count! + by } : move,
  )
}

const fromKept = (
  plan: Plan,
  index: number,
  { identity, moves }: Extract<Source, { how: 'kept' }>,
): CutPlan | NotCut => {
  const done = plan.features.slice(0, index + 1).flatMap((one) => (one.status === 'planned' ? [one.name] : []))
  const then = [...moves.keys()].slice(0, done.length)
  if (then.join('\n') !== done.join('\n'))
    return notCut(
      say`that sheet has the features ${listed([...moves.keys()])}, and the job as it is now does ${listed(done)} first`,
    )
  const cut = replayed(plan, moves, index)
  if (identity === identityOf(plan) && identity !== identityOf(cut))
    return notCut("it has the name of today's sheet and other steps: the file was changed")
  const name = plan.features[index]!.name
  const feature = cut.features[index]!
  const stop = feature.status === 'planned' ? stopOf(feature.operation, feature.trace) : null
  const fault =
    feature.status === 'planned' && stop !== null
      ? replayNext(plan.lathe, plan.setup, feature.before, feature.operation, 0).faults.find(
          ({ move }) => move >= 0 && move <= stop.at,
        )
      : undefined
  if (fault !== undefined)
    return notCut(
      say`the replay does not prove the steps of that sheet before the stop of ${JSON.stringify(name)}: ${fault.say.replace(/\.$/, '')}`,
    )
  return { ok: true, plan: cut, identity, from: 'kept sheet' }
}

const notCut = (reason: Prose): NotCut => ({
  ok: false,
  code: 'other-sheet',
  reason: say`the sheet that was kept does not fit the job: ${reason}`,
  remedy: 'give the job as it was when that sheet was printed, or the sheet that was cut',
})

const listed = (names: readonly string[]): Prose =>
  names.length === 0 ? 'none' : names.map((name) => JSON.stringify(name)).join(', ')

/** The same plan with other moves for some features, up to the named one. They are replayed one after another, each with its budget. */
const replayed = (plan: Plan, moves: ReadonlyMap<string, readonly Move[]>, last: number): Plan => {
  let progress: Progress = startOf(plan.setup)
  const features = plan.features.map((feature, at): FeaturePlan => {
    const other = moves.get(feature.name)
    if (feature.status === 'refused' || at > last) return feature
    const operation = { ...feature.operation, moves: other ?? feature.operation.moves }
    const { trace, after } = replayNext(plan.lathe, plan.setup, progress, operation, at)
    const before: Progress = { ...progress, possibly: progress.surely }
    const here = { ...feature, before: progress }
    progress = after
    return other === undefined
      ? here
      : { ...here, operation, trace, budget: budgetOf(plan.lathe, plan.setup, operation, before) }
  })
  return { ...plan, features }
}
