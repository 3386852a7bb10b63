import type { Form } from '../moves/form.ts'
import type { FeaturePlan } from '../plan/plan.ts'

/** What a form looks like, and nothing of its sizes: a learner's drawing is not to scale. */
export type Outline = 'square' | 'round' | 'sloping' | 'corner'

export const outlineOf = (feature: FeaturePlan): Outline => {
  if (feature.status === 'refused') return 'square'
  const { wanted, region } = feature.operation
  const inside = wanted.filter(({ from, to }) => to > region.from && from < region.to)
  const arc = inside.find(({ curve }) => curve.kind === 'arc')
  if (arc === undefined) return inside.some(slopes) ? 'sloping' : 'square'
  const middle = arc.curve.kind === 'arc' ? arc.curve.zc : 0
  return middle > arc.from && middle < arc.to ? 'round' : inside.length > 1 ? 'square' : 'corner'
}

const slopes = ({ curve }: Form[number]): boolean => curve.kind === 'line' && curve.d0 !== curve.d1
