import { travelAt } from '../dials/travel.ts'
import { type Dial, readable } from '../lathe/lathe.ts'
import { readingFigure, turnsOf } from '../phrase/dial.ts'
import { identify } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { say } from '../phrase/say.ts'
import type { Plan } from '../plan/plan.ts'
import { peak } from '../replay/form/curve.ts'
import { INCH, type Length, MM } from '../units/length.ts'
import type { Planned } from './scene.ts'
import type { Sheet, SheetStep } from './sheet.ts'

/** Before a step: what a learner does first, or a box that the instructor signs. */
export type SupervisedCheck = {
  readonly feature: number
  /** The number of the step that waits for it. */
  readonly before: number
  readonly kind: 'dry-run' | 'before-power' | 'at-stop' | 'before-finish'
  readonly says: Phrase
}

/** For learners, in the order of the steps. Common practice, no source. */
export const supervisedFor = (plan: Plan, { steps }: Pick<Sheet, 'steps'>): SupervisedCheck[] =>
  plan.features.flatMap((feature, index) => {
    const own = steps.filter((step) => step.feature === index)
    return feature.status === 'planned' && own.length > 0 ? checksOf(plan, feature, own, index) : []
  })

const checksOf = (plan: Plan, feature: Planned, own: readonly SheetStep[], index: number): SupervisedCheck[] => {
  const start = own.find(({ action }) => action === 'start')
  if (start === undefined) return []
  const stop = own.findIndex(({ action, purpose }) => action === 'measure' && purpose === 'expect-rough')
  const after = own[stop < 0 ? own.length : stop + 1]
  const finish = own.find(({ group, number }) => group === 'finish' && number > start.number)
  const check = (kind: SupervisedCheck['kind'], before: SheetStep | undefined, says: Phrase): SupervisedCheck[] =>
    before === undefined
      ? []
      : [{ feature: index, before: before.number, kind, says: identify(`supervised.${before.number}.${kind}`, says) }]
  return [
    ...check('dry-run', start, dryRun(plan, feature, own, start.number)),
    ...check('before-power', start, ['before power']),
    ...check('at-stop', after, ['at the stop: sizes, and the readings chosen by them']),
    ...check('before-finish', finish, ['before the finish: every slide where it must be']),
  ]
}

/** All moves once with nothing to cut: so far out that the deepest reading stays clear of the uncut surface. */
const dryRun = (plan: Plan, feature: Planned, own: readonly SheetStep[], start: number): Phrase => {
  const last = own.findLast(({ group }) => group !== 'end')!.number
  return say`spindle off: cross-feed ${outWords(plan, feature)}; make the moves of steps ${start + 1} to ${last} so; then every slide back to where it is now, compound and carriage forward onto their places`
}

const outWords = (plan: Plan, feature: Planned): Phrase => {
  const { crossFeed } = plan.lathe
  const out = dryOut(plan, feature)
  const counts = out / travelAt(crossFeed, 1)
  if (crossFeed.kind === 'readout')
    return say`OUT, so that every reading of it is ${readingFigure(crossFeed, counts * readable(crossFeed))} less`
  return say`OUT ${turnsOf(Math.round(out / turnOf(crossFeed)))} more, the same marks`
}

/** How far out the dry run is made: whole turns, or round amounts on a readout; travel of the slide, pm. */
export const dryOut = (plan: Plan, feature: Planned): Length => {
  const { crossFeed, units } = plan.lathe
  const part = crossFeed.kind === 'dial' ? turnOf(crossFeed) : units === 'inch' ? INCH / 10 : 2 * MM
  return Math.ceil((deepest(feature) + (units === 'inch' ? INCH / 100 : MM / 4)) / part) * part
}

const turnOf = (dial: Dial): Length => travelAt(dial, dial.perTurn / readable(dial))

/** How deep the finished form goes below its surface. In a form d is minus the radius. */
const deepest = ({ operation: { region, surface }, trace }: Planned): Length =>
  surface / 2 +
  Math.max(
    ...trace.possibly.filter(({ from, to }) => from < region.to && to > region.from).map((piece) => peak(piece).d),
  )
