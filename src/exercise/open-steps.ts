import { waysOf } from '../phrase/dial.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import type { Sheet, SheetStep } from '../sheet/sheet.ts'
import type { Part } from './asks/ask.ts'
import { blankFigure } from './blank-figure.ts'
import type { Placed } from './blanks.ts'
import type { Open } from './open-heading.ts'

/** Every step with its way and no reading of a dial but those that nothing is asked about. */
export const openSteps = ({ steps, features }: Sheet, blanks: readonly Placed[], open: Open): SheetStep[] =>
  steps.map((step): SheetStep => {
    const own = (part: Part) =>
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
      does:
        step.action === 'set-speed' && open.has('rpm')
          ? ['the speed that you worked out']
          : doesOf(step, angle, open, blankIn(own)),
      effect: effectOf(step, open, own('shift')?.number ?? null),
      more: [...(step.action === 'layout' || step.action === 'align' ? step.more : []), ...initials(steps, step)],
      reading: null,
      turns: null,
      mark: null,
    }
  })

/** Their words have no reading that comes from the drawing. */
const HAND: ReadonlySet<SheetStep['action']> = new Set(['zero', 'touch-off', 'lock', 'unlock'])

const doesOf = (step: SheetStep, angle: number, open: Open, blank: Phrase): Phrase => {
  // How far it is wound back first tells how far the tool goes.
  if (step.action === 'take-up' && step.slide !== null)
    return [`turn ${waysOf(step.slide, angle).forward}, by more than the lost motion`]
  if (step.slide === null || HAND.has(step.action)) return handWords(step)
  if (READINGS.some((word) => open.has(word))) return turned(step, angle, blank)
  if (DERIVED.some((word) => open.has(word))) return leftOpen(step, angle)
  // A reading along the work tells how far the tool is shifted.
  if (open.has('shift') && step.slide !== 'cross-feed') return alongLeftOpen(step, angle)
  return open.has('rpm') ? withoutPace(step.does) : step.does
}

/** How fast the dial is turned, and how long the tool rests, would tell the speed: both are at the end. */
const withoutPace = (does: Phrase): Phrase => {
  const at = does.findIndex((part) => typeof part !== 'string' && part.role === 'pace')
  const before = does[at - 1]
  return at < 0 || typeof before !== 'string' ? does : [...does.slice(0, at - 1), before.replace(/[,;] [^,;]*$/, '')]
}

/** What asks for readings, and what readings would tell. */
const READINGS = ['moves', 'readings', 'turns', 'marks'] as const
const DERIVED = ['bottom-diameter', 'depth', 'form', 'corrections'] as const

const blankIn = (own: (part: Part) => Placed | undefined): Phrase => {
  const [reading, turns, mark] = [own('reading'), own('turns'), own('mark')]
  if (reading !== undefined) return [blankFigure(reading.number)]
  if (turns === undefined && mark === undefined) return []
  const part = (blank: Placed | undefined) => blankFigure(blank?.number ?? null)
  return [part(turns), ' whole turns and ', part(mark)]
}

/** Nothing is asked here, and the reading would tell what is asked elsewhere. */
const leftOpen = (step: SheetStep, angle: number): Phrase => turned(step, angle, [blankFigure(null)])

const alongLeftOpen = (step: SheetStep, angle: number): Phrase =>
  step.action === 'go-past' ? turned(step, angle, []) : leftOpen(step, angle)

const handWords = ({ action, does }: SheetStep): Phrase =>
  action === 'measure' ? ['with the spindle STOPPED, write down every size'] : does

const turned = ({ action, slide, purpose, reading }: SheetStep, angle: number, blank: Phrase): Phrase => {
  const { forward, back } = waysOf(slide!, angle)
  if (purpose === 'clear-to-measure') return [`${back}, several whole turns: count them`]
  if (action === 'back-out') return [`${back}, clear of the work`]
  if (action === 'go-past') return [`${back}, past the next reading by more than the lost motion`]
  const way = action === 'feed-across' ? `at the feed ${forward}` : forward
  if (blank.length > 0) return [`${way}, to `, ...blank]
  // On the way to a place that is not asked: roughing stays off a wall that gets a plunge of its own.
  if (action === 'shift') return [`${way}, short of its wall by what is left there`]
  // A zero is no answer.
  return [reading === 0 ? `${way}, onto 0` : `${way}, to where it was`]
}

/** What the cut comes to is told; how far the tool is shifted only where nobody is asked for it. */
const effectOf = ({ action, effect, slide }: SheetStep, open: Open, number: number | null): Phrase => {
  if (number !== null) return ['shift ', blankFigure(number), ' along the work']
  if (action === 'feed-in' && slide === 'cross-feed') return depthTold(effect, open)
  if (action === 'shift') return open.has('shift') ? [] : effect
  return effect.some((part): part is Figure => typeof part !== 'string') ? [] : effect
}

/** ".054 deep, .7665 dia": what of it is no answer. */
const depthTold = (effect: Phrase, open: Open): Phrase => {
  if (open.has('depth') || open.has('form') || open.has('corrections')) return []
  if (!open.has('bottom-diameter')) return effect
  const end = effect.findIndex((part) => typeof part !== 'string' && part.role === 'diameter')
  return end < 0 ? effect : [...effect.slice(0, end - 1), ' deep']
}

/** The instructor looks before power is on, at each stop, and before the finish. */
const initials = (steps: readonly SheetStep[], step: SheetStep): Phrase[] => {
  const before = steps[steps.indexOf(step) - 1]
  if (step.action === 'start' && !steps.slice(0, steps.indexOf(step)).some(({ action }) => action === 'start'))
    return [['guards, chuck key, clothing: pass / fail ______  instructor before power ______']]
  if (step.action === 'measure') return [['instructor at the stop ______']]
  return step.group === 'finish' && before?.group !== 'finish' ? [['instructor before the finish ______']] : []
}
