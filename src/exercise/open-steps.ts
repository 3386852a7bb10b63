import { waysOf } from '../phrase/dial.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import type { Sheet, SheetStep } from '../sheet/sheet.ts'
import { blankFigure } from './blank-figure.ts'
import type { Placed } from './blanks.ts'
import type { Open } from './open-heading.ts'

/** Every step with its way and no reading of a dial but those that nothing is asked about. */
export const openSteps = ({ steps, features }: Sheet, blanks: readonly Placed[], open: Open): SheetStep[] =>
  steps.map((step): SheetStep => {
    const own = (part: 'reading' | 'shift') =>
      blanks.find(({ place }) => 'step' in place && place.step === step.number && place.part === part)
    const feature = features[step.feature]!
    const angle = feature.status === 'planned' ? feature.compoundAngle : 0
    return {
      number: step.number,
      feature: step.feature,
      group: step.group,
      action: step.action,
      purpose: null,
      slide: step.slide,
      thing: step.thing,
      does: doesOf(step, angle, open, own('reading')?.number ?? null),
      effect: effectOf(step, open, own('shift')?.number ?? null),
      more: [...(step.action === 'layout' || step.action === 'align' ? step.more : []), ...initials(steps, step)],
      reading: null,
      turns: null,
      mark: null,
    }
  })

/** Their words have no reading that comes from the drawing. */
const HAND: ReadonlySet<SheetStep['action']> = new Set(['take-up', 'zero', 'touch-off', 'lock', 'unlock'])

const doesOf = (step: SheetStep, angle: number, open: Open, number: number | null): Phrase => {
  if (step.slide === null || HAND.has(step.action)) return handWords(step)
  if (open.has('readings')) return turned(step, angle, number)
  // A reading along the work tells how far the tool is shifted.
  return open.has('shift') && step.slide !== 'cross-feed' ? alongLeftOpen(step, angle) : step.does
}

const alongLeftOpen = (step: SheetStep, angle: number): Phrase =>
  step.action === 'shift' || step.action === 'return' || step.action === 'feed-across'
    ? [`${waysOf(step.slide!, angle).forward}, to `, blankFigure(null)]
    : turned(step, angle, null)

const handWords = ({ action, does }: SheetStep): Phrase =>
  action === 'measure' ? ['with the spindle STOPPED, write down every size'] : does

const turned = ({ action, slide, purpose }: SheetStep, angle: number, number: number | null): Phrase => {
  const { forward, back } = waysOf(slide!, angle)
  if (purpose === 'clear-to-measure') return [`${back}, several whole turns: count them`]
  if (action === 'back-out') return [`${back}, clear of the work`]
  if (action === 'go-past') return [`${back}, past the next reading by more than the lost motion`]
  const way = action === 'feed-across' ? `feed SLOWLY ${forward}` : forward
  return number === null ? [`${way}, to where it was`] : [`${way}, to `, blankFigure(number)]
}

/** What the cut comes to is told; how far the tool is shifted only where nobody is asked for it. */
const effectOf = ({ action, effect, slide }: SheetStep, open: Open, number: number | null): Phrase => {
  if (number !== null) return ['shift ', blankFigure(number), ' along the work']
  if (action === 'feed-in' && slide === 'cross-feed') return effect
  if (action === 'shift') return open.has('shift') ? [] : effect
  return effect.some((part): part is Figure => typeof part !== 'string') ? [] : effect
}

/** The instructor looks before power is on, at each stop, and before the finish. */
const initials = (steps: readonly SheetStep[], step: SheetStep): Phrase[] => {
  const before = steps[steps.indexOf(step) - 1]
  if (step.action === 'start' && !steps.slice(0, steps.indexOf(step)).some(({ action }) => action === 'start'))
    return [['guards, chuck key, clothing: pass / fail ______  instructor before power ______']]
  if (step.action === 'measure') return [['instructor at the stop ______']]
  return step.group === 'finish' && before?.group !== 'finish' ? [['instructor before the finish ______']] : []
}
