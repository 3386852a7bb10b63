import { length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { say } from '../phrase/say.ts'
import type { Plan } from '../plan/plan.ts'
import { INCH, type Length, MM } from '../units/length.ts'
import type { Planned } from './scene.ts'

/** What is seen, felt or measured, and the mistake that it comes from, where no replay can show it. */
export const signsOf = (plan: Plan, feature: Planned): Phrase[] => [
  ...(feature.pace.rest === null ? [] : [spiral(plan, feature)]),
  ...warm(plan, feature),
  // What may be seen on any form is told once.
  ...(plan.features.find(({ status }) => status === 'planned') === feature ? SIGNS : []),
]

/** Drawn out while it still feeds, a tool leaves a spiral one feed deep (plane geometry). */
const spiral = ({ units }: Plan, { pace }: Planned): Phrase =>
  say`the bottom out of round, a spiral of up to ${length('expected', 2 * pace.feed, units)} across: drawn out without a rest`

/** As warm as a hand that can just bear it: 20 degrees Celsius over the shop. Common practice, no source. */
const WARM = 20

const warm = ({ units, part }: Plan, { operation }: Planned): Phrase[] => {
  if (part.growth === undefined) return []
  const grown = (operation.surface * part.growth * WARM) / 1e6
  const least: Length = units === 'inch' ? INCH / 10_000 : MM / 1000
  if (grown < least) return []
  const more = length('expected', Math.round(grown / least) * least, units)
  return [
    say`right when measured, ${more} small on ${length('stock', operation.surface, units)} when cold: measured warm to the hand`,
  ]
}

/** Common practice, no source. */
const SIGNS: readonly Phrase[] = [
  ['walls torn or in steps, another width at each plunge: the carriage was not locked'],
  ['rubs, and then digs in: the tool is above center; drags and lifts its chip badly: below'],
  ['a line where the cut was stopped: the tool rested while roughing'],
  ['even marks all along and a loud note: chatter; less speed, more feed, less overhang'],
]
