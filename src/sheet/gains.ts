import { dimensionFigure } from '../phrase/dimensions.ts'
import { identify } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { joinedBy, together } from '../phrase/say.ts'
import { labelOf } from '../plan/labels.ts'
import type { Plan } from '../plan/plan.ts'
import type { Units } from '../units/length.ts'
import type { Planned } from './scene.ts'
import type { SheetGain } from './sheet.ts'

/** What would make a feature hold: first the action, then the result, then the keys that plan it. */
export const gainsOf = (plan: Plan, feature: Planned, position: number): SheetGain[] =>
  (feature.gains ?? []).map((gain, index) => ({
    change: gain.change,
    set: gain.set.map((one) => together([one])),
    holds: gain.holds,
    says: identify(`feature.${position + 1}.gain.${index + 1}`, [
      ...joinedBy(', ', gain.say),
      ': ',
      ...gain.sizes.flatMap((one, i): Phrase => [...(i > 0 ? [', '] : []), ...rangeOf(one, plan.units)]),
      ' (',
      ...joinedBy(', ', gain.set),
      ')',
    ]),
    sizes: gain.sizes.map(({ id, planned, low, high, rss, spare, verdict }) => {
      const of = (role: 'planned' | 'low' | 'high' | 'rss' | 'spare', value: number) =>
        dimensionFigure(role, id, value, plan.units)
      return {
        id,
        verdict,
        planned: of('planned', planned),
        low: of('low', low),
        high: of('high', high),
        rss: of('rss', rss),
        spare: spare === null ? null : of('spare', spare),
      }
    }),
  }))

const rangeOf = (
  { id, low, high, verdict }: NonNullable<Planned['gains']>[number]['sizes'][number],
  units: Units,
): Phrase => [
  `${labelOf(id)} `,
  { ...dimensionFigure('low', id, low, units), toward: 'down' },
  ' to ',
  { ...dimensionFigure('high', id, high, units), toward: 'up' },
  verdict === 'holds' ? ' in tolerance' : ' not yet',
]
