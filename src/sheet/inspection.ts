import type { Check, TextPart } from '../moves/inspection.ts'
import { angleFigure } from '../phrase/dimensions.ts'
import { identify, length } from '../phrase/figure.ts'
import type { Figure, Phrase, Role } from '../phrase/phrase.ts'
import { called } from '../phrase/say.ts'
import type { Plan } from '../plan/plan.ts'
import type { Units } from '../units/length.ts'
import type { Planned } from './scene.ts'
import type { InspectionLine } from './sheet.ts'

/** The table to fill in at the bench: one line per size. The planned sizes are those of the replayed form. */
export const inspectionOf = (plan: Plan, feature: Planned, position: number): InspectionLine[] =>
  (feature.inspection ?? []).map((check) => line(check, plan.units, `feature.${position + 1}.inspection.${check.id}`))

const line = (check: Check, units: Units, place: string): InspectionLine => {
  const one = (role: Role, value: number, name: string): Figure => ({
    ...(check.unit === 'angle' ? angleFigure(role, value) : length(role, value, units)),
    id: `${place}.${name}`,
  })
  const both = (pair: readonly [number, number] | null, low: string, high: string) =>
    pair === null ? null : ([one('limit', pair[0], low), one('limit', pair[1], high)] as const)
  return {
    id: check.id,
    label: check.label,
    using: identify(
      `${place}.using`,
      check.using.map((part) => shown(part, units)),
    ),
    planned: one('planned', check.planned, 'planned'),
    limits: both(check.limits, 'limit.low', 'limit.high'),
    pin: check.pin === null ? null : one('instrument', check.pin, 'pin'),
    pair:
      check.pair === null ? null : [one('instrument', check.pair[0], 'go'), one('instrument', check.pair[1], 'no-go')],
  }
}

const shown = (part: TextPart, units: Units): Phrase[number] => {
  if (typeof part === 'string') return part
  if ('label' in part) return called('instrument', part.label, part.size, units)
  return 'length' in part ? length('tool', part.length, units) : angleFigure('angle', part.angle)
}
