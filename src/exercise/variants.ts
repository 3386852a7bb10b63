import { plain } from '../phrase/words.ts'
import type { FeaturePlan, Plan } from '../plan/plan.ts'
import type { Exercise, Learner } from './exercise.ts'
import type { Base } from './read.ts'
import { shuffled } from './shuffle.ts'
import { at, flow, type Tree } from './tree.ts'

/** What one learner gets: a job that proves. */
export type Variant = {
  readonly learner: Learner
  /** Position in the set, from 0. */
  readonly index: number
  /** The values that were drawn, by path, and the whole job. */
  readonly values: Readonly<Record<string, string>>
  readonly job: string
  readonly plan: Plan
  /** Whether the job gives a key of a feature. */
  readonly gives: (feature: number, key: string) => boolean
  /** Sheets in the set that are unlike; only said of a sheet that is like an earlier one. */
  readonly holds: number | null
}

/** Why there is no sheet for a learner. */
export type NoVariant = { readonly index: number; readonly tried: number; readonly why: string; readonly hint: string }

export type Planner = (text: string) => { readonly plan: Plan | null; readonly why: string | null }

/** So many elements in a row that do not prove are enough to say that it cannot be done. */
export const ENOUGH = 2000

/**
 * A job for each learner in turn: each takes the next element of the shuffled space that proves. Where all have been
 * taken they are taken again, from the first.
 */
export function* variantsOf(
  { learners, seed }: Pick<Exercise, 'learners' | 'seed'>,
  { space }: Base,
  planner: Planner,
  own: (learner: Learner) => (tree: Tree) => Tree,
): Generator<Variant | NoVariant> {
  let draw = shuffled(space.size, seed)
  let taken = 0
  let holds: number | null = null
  for (const [index, learner] of learners.entries()) {
    let tried = 0
    let why = 'the job does not prove'
    for (;;) {
      const next = draw.next()
      if (next.done === true) {
        if (taken === 0 || tried > ENOUGH) {
          yield { index, tried, why, hint: HINT }
          break
        }
        holds ??= taken
        draw = shuffled(space.size, seed)
        continue
      }
      const tree = space.element(next.value, own(learner))
      const job = tree.ok ? flow(tree.value) : ''
      const { plan, why: no } = tree.ok ? planner(job) : { plan: null, why: tree.message }
      tried++
      if (plan !== null && tree.ok) {
        taken++
        yield {
          index,
          learner,
          values: space.values(tree.value),
          job: `${job}\n`,
          plan,
          gives: (feature, key) => at(tree.value, `features.${feature}.${key}`) !== null,
          holds,
        }
        break
      }
      why = no ?? why
      if (tried >= ENOUGH) {
        yield { index, tried, why, hint: HINT }
        break
      }
    }
  }
}

const HINT = 'change the ranges, or look at the base job with groovewright sheet'

/** Why a plan is no exercise; null where every feature proves. */
export const notProven = (plan: Plan): string | null => {
  const refused = plan.features.find((feature) => feature.status === 'refused')
  return refused === undefined ? null : refusal(refused, plan)
}

const refusal = (feature: Extract<FeaturePlan, { status: 'refused' }>, plan: Plan): string =>
  `${feature.name} cannot be cut: ${plain(feature.reason, plan.units)}`
