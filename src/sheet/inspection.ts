import type { Check, Decision, TextPart } from '../moves/inspection.ts'
import { angleFigure } from '../phrase/dimensions.ts'
import { identify, length } from '../phrase/figure.ts'
import type { Figure, Phrase, Role } from '../phrase/phrase.ts'
import { called, say } from '../phrase/say.ts'
import type { Plan } from '../plan/plan.ts'
import type { Units } from '../units/length.ts'
import { type Zones, zonesOf } from './decision.ts'
import type { Planned } from './scene.ts'
import type { InspectionLine } from './sheet.ts'

/** The table to fill in at the bench: one line per size. The planned sizes are those of the replayed form. */
export const inspectionOf = (plan: Plan, feature: Planned, position: number): InspectionLine[] =>
  (feature.inspection ?? []).map((check) =>
    line(check, plan.decision ?? 'prove', plan.units, `feature.${position + 1}.inspection.${check.id}`),
  )

const line = (check: Check, decision: Decision, units: Units, place: string): InspectionLine => {
  const one = (role: Role, value: number, name: string): Figure => ({
    ...(check.unit === 'angle' ? angleFigure(role, value) : length(role, value, units)),
    id: `${place}.${name}`,
  })
  const both = (pair: readonly [number, number] | null, low: string, high: string) =>
    pair === null ? null : ([one('limit', pair[0], low), one('limit', pair[1], high)] as const)
  return {
    id: check.id,
    label: check.label,
    using: identify(`${place}.using`, [
      ...check.using.map((part) => shown(part, units)),
      ...(check.by ? [', ±', one('instrument', check.by.within, 'within')] : []),
    ]),
    asked: check.by !== null,
    by: check.by ? { with: check.by.with, within: one('instrument', check.by.within, 'within') } : null,
    planned: one('planned', check.planned, 'planned'),
    limits: both(check.limits, 'limit.low', 'limit.high'),
    decision: decisionOf(zonesOf(decision, check), decision, one, place),
    pin: check.pin === null ? null : one('instrument', check.pin, 'pin'),
    pair:
      check.pair === null ? null : [one('instrument', check.pair[0], 'go'), one('instrument', check.pair[1], 'no-go')],
  }
}

/** Never rounded so that more is accepted, or more rejected, than is proved. */
const decisionOf = (
  zones: Zones | null,
  decision: Decision,
  one: (role: Role, value: number, name: string) => Figure,
  place: string,
): InspectionLine['decision'] => {
  if (zones === null) return null
  const at = (value: number, name: string, toward: 'up' | 'down'): Figure => ({
    ...one('limit', value, `decision.${name}`),
    from: 'answer',
    toward,
  })
  const { accept } = zones
  const [low, high] = [accept && at(accept[0], 'accept.low', 'up'), accept && at(accept[1], 'accept.high', 'down')]
  const [under, over] = [at(zones.rejectUnder, 'under', 'down'), at(zones.rejectOver, 'over', 'up')]
  const says =
    low === null || high === null
      ? say`this instrument proves nothing within the limits: take a surer one; reject under ${under}, over ${over}`
      : decision === 'simple'
        ? say`accept ${low} to ${high}, reject the rest`
        : say`accept ${low} to ${high}, reject under ${under}, over ${over}; between: not proved`
  return {
    accept: low === null || high === null ? null : [low, high],
    rejectUnder: under,
    rejectOver: over,
    says: identify(`${place}.decision.says`, says),
  }
}

const shown = (part: TextPart, units: Units): Phrase[number] => {
  if (typeof part === 'string') return part
  if ('label' in part) return called('instrument', part.label, part.size, units)
  return 'length' in part ? length('tool', part.length, units) : angleFigure('angle', part.angle)
}
