import { readingOf, shownOn } from '../phrase/dial.ts'
import { length } from '../phrase/figure.ts'
import type { Phrase, Prose } from '../phrase/phrase.ts'
import { exact, say } from '../phrase/say.ts'
import { identityOf } from '../plan/identity.ts'
import type { Continues, Plan } from '../plan/plan.ts'
import { scaleOf } from '../plan/scale.ts'
import { inUnits } from '../units/length.ts'
import { type CutPlan, roughedAt } from './source.ts'
import { stopOf } from './stop.ts'

/** Which moves before the stop the steps rely on, and what option to give if others were made. `today`: as the job plans it now. */
export const continuesFrom = (
  today: Plan,
  { plan, identity, from }: CutPlan,
  index: number,
  stepsBefore: number,
): { readonly continues: Continues; readonly says: readonly Phrase[] } => {
  const rough = roughedAt(plan.features[index]!)
  const scale = rough === null ? null : scaleOf(plan, rough.slide)
  if (rough === null || scale === null) return { continues: { from, roughedAt: null }, says: [] }
  const { value } = readingOf(scale, rough.count)
  const also: Phrase = scale.kind === 'readout' ? [] : [' (', length('reading', value, scale.units), ')']
  const to = say`, roughed to ${shownOn(scale, rough.count)}${also} at step ${stepsBefore + rough.index + 1}`
  const now = identityOf(today)
  const other = identity === now ? '' : `. The job plans another sheet now, ${now}: none of its steps is used`
  const says: Record<Continues['from'], Phrase> = {
    job: say`ASSUMED: sheet ${now} was cut${to}. If the sheet that was cut has another name or another reading there, give it (--sheet, the sheet kept as data) or that reading (--roughed-at)`,
    reading: say`As the job plans it now${to}, as given${identity === null ? leftElsewhere(plan, index) : ''}`,
    'kept sheet': say`Goes on from the kept sheet${identity === null ? '' : ` ${identity}`}${to}${other}`,
  }
  return {
    continues: { from, roughedAt: Number(inUnits(value, scale.units).toFixed(9)) },
    says: [[...says[from], '.']],
  }
}

/** The sheet that was cut may have backed out to another mark. The steps start from the mark named here. */
const leftElsewhere = (plan: Plan, index: number): Phrase => {
  const feature = plan.features[index]!
  if (feature.status === 'refused') return []
  const { crossFeed } = plan.lathe
  const at = stopOf(feature.operation, feature.trace)?.at ?? 0
  const left = feature.operation.moves.slice(0, at).findLast(({ slide }) => slide === 'cross-feed')?.count ?? 0
  const out = length('reading', Math.abs(readingOf(crossFeed, left).value), crossFeed.units)
  return [
    '. The steps below begin with the cross-feed ',
    out,
    ' before 0: bring it there first, if the sheet that was cut left it elsewhere',
  ]
}

/** The same in short for a refusal: the sheet that was really cut may not be refused. */
export const assumedInShort = (today: Plan, { plan, from }: CutPlan, index: number): Prose => {
  const rough = roughedAt(plan.features[index]!)
  if (from !== 'job' || rough === null) return ''
  const scale = scaleOf(plan, rough.slide)!
  const at = exact('reading', readingOf(scale, rough.count).value, scale.units)
  return say`; assumed is sheet ${identityOf(today)}, roughed to ${at} on the dial: if another was cut, give it (--sheet) or that reading (--roughed-at)`
}
