import { travelAt } from '../dials/travel.ts'
import type { Move, Slide } from '../moves/operation.ts'
import type { Phrase } from '../phrase/phrase.ts'
import type { FeaturePlan, Plan } from '../plan/plan.ts'
import { scaleOf } from '../plan/scale.ts'
import type { Units } from '../units/length.ts'
import type { Expected } from './sheet.ts'

export type Planned = Extract<FeaturePlan, { status: 'planned' }>

/** The readings of the three dials, in readable steps from their zeros; null before there is a zero. */
export type Counts = Readonly<Record<Slide, number | null>>

/** One move with its surroundings: the words of a step are made from it. */
export type Scene = {
  readonly plan: Plan
  readonly feature: Planned
  readonly units: Units
  readonly move: Move
  readonly index: number
  readonly before: Counts
  readonly after: Counts
  /** The move before this one, for moves that come back to the same mark. */
  readonly previous: Move | null
  /** The cross-feed was backed out by whole turns to measure, and comes back now. */
  readonly backFromMeasuring: boolean
  /** The spindle runs while this move is made. */
  readonly turning: boolean
}

export type StepWords = {
  readonly thing: string
  /** What the hand does before that. */
  readonly first?: Phrase
  readonly does: Phrase
  /** The same for who knows the work. */
  readonly short?: Phrase
  readonly effect: Phrase
  readonly more: readonly Phrase[]
  /** The sizes that are measured, each told by one of the first lines of `more`. */
  readonly expected?: readonly Expected[]
}

/** Every move of a planned feature with its surroundings. */
export const scenesOf = (plan: Plan, feature: Planned): Scene[] => {
  const scenes: Scene[] = []
  let before: Counts = { 'cross-feed': null, compound: null, carriage: null }
  let away = false
  let turning = false
  feature.operation.moves.forEach((move, index, moves) => {
    const after = countsAfter(before, move)
    const onCrossFeed = move.slide === 'cross-feed'
    const backFromMeasuring = away && onCrossFeed
    scenes.push({
      plan,
      feature,
      units: plan.units,
      move,
      index,
      before,
      after,
      previous: moves[index - 1] ?? null,
      backFromMeasuring,
      turning,
    })
    if (move.action === 'start' || move.action === 'stop') turning = move.action === 'start'
    if (onCrossFeed) away = move.purpose === 'clear-to-measure'
    before = after
  })
  return scenes
}

const countsAfter = (before: Counts, move: Move): Counts => {
  if (move.slide === undefined || move.action === 'touch-off' || move.action === 'lock' || move.action === 'unlock')
    return before
  if (move.action === 'zero') return { ...before, [move.slide]: 0 }
  return move.count === undefined || move.count === null ? before : { ...before, [move.slide]: move.count }
}

/** How deep (below the feature's surface) and how far along from its zero the tool's reference point is, pm. */
export const placeOf = (scene: Scene, counts: Counts): { readonly deep: number; readonly along: number } => {
  const at = (slide: Slide): number => {
    const scale = scaleOf(scene.plan, slide)
    return scale === null ? 0 : travelAt(scale, counts[slide] ?? 0)
  }
  const turn = (scene.feature.operation.angle * Math.PI) / 180
  const { surface } = scene.feature.operation
  const { zero } = scene.feature.trace
  return {
    deep: at('cross-feed') + at('compound') * Math.sin(turn) + (surface - zero.diameter) / 2,
    along: at('carriage') + at('compound') * Math.cos(turn),
  }
}
