import type { Budgeted } from '../budget/budgeted.ts'
import type { Scale } from '../lathe/lathe.ts'
import type { Units } from '../units/length.ts'
import { readingFigure } from './dial.ts'
import { dimensionFigure, labelOf } from './dimensions.ts'
import { identify } from './figure.ts'
import type { Plan } from './plan.ts'
import type { Planned } from './scene.ts'
import type { Figure, Phrase, ProofLine } from './sheet.ts'

/** What was replayed, and what each finished dimension comes to. */
export const proofOf = (plan: Plan, feature: Planned, position: number) => ({
  replayed: identify(`feature.${position + 1}.proof`, replayed(plan, feature)),
  lines: feature.budget.map((budgeted) => line(budgeted, plan.units, `feature.${position + 1}.proof.${budgeted.id}`)),
})

const replayed = (plan: Plan, { operation }: Planned): Phrase => {
  const each: (readonly [string, Scale])[] = [
    ['cross-feed', plan.lathe.crossFeed],
    ['compound', plan.lathe.compound.scale],
    ...(plan.lathe.carriage !== null && operation.moves.some(byCarriage)
      ? ([['carriage', plan.lathe.carriage]] as const)
      : []),
  ]
  const dials = each.flatMap(([name, scale]): Phrase[] =>
    scale.kind === 'dial'
      ? [['0 to ', { ...readingFigure(scale, scale.backlash), role: 'backlash' }, ` (${name})`]]
      : [],
  )
  if (dials.length === 0) return ['PROVED by replay, move by move; the readouts have no lost motion']
  return [
    'PROVED by replay, for every backlash from ',
    ...dials.flatMap((dial, i) => (i === 0 ? dial : [dials.length > i + 1 ? ', ' : ' and ', ...dial])),
  ]
}

const byCarriage = ({ slide, count }: Planned['operation']['moves'][number]): boolean =>
  slide === 'carriage' && typeof count === 'number'

const line = (budgeted: Budgeted, units: Units, place: string): ProofLine => {
  const one = (role: Figure['role'], value: number, name: string): Figure => ({
    ...dimensionFigure(role, budgeted.id, value, units),
    id: `${place}.${name}`,
  })
  const limits = budgeted.limits
  return {
    id: budgeted.id,
    label: labelOf(budgeted.id),
    verdict: budgeted.verdict,
    planned: one('planned', budgeted.planned, 'planned'),
    low: one('low', budgeted.low, 'low'),
    high: one('high', budgeted.high, 'high'),
    rss: one('rss', budgeted.rss, 'rss'),
    limits: limits === null ? null : [one('limit', limits[0], 'limit.low'), one('limit', limits[1], 'limit.high')],
    spare: budgeted.spare === null ? null : one('spare', Math.abs(budgeted.spare), 'spare'),
    worstCause: budgeted.worstCause,
    remedy: budgeted.verdict === 'may not hold' ? identify(`${place}.remedy`, remedy(budgeted, units)) : null,
  }
}

/** Two ways to make it hold: less of the largest error, or (where both ends stick out) nothing but that; or aiming elsewhere. */
const remedy = (budgeted: Budgeted, units: Units): Phrase => {
  const short = dimensionFigure('spare', budgeted.id, Math.abs(budgeted.spare ?? 0), units)
  return [`would hold with `, short, ` less of "${budgeted.worstCause}", the largest cause`]
}
