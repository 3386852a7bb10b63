import { travelAt } from '../dials/travel.ts'
import type { Slide } from '../moves/operation.ts'
import {
  countShown,
  markFigure,
  marks,
  marksPerTurn,
  readingFigure,
  readingOf,
  turnsOf,
  turnTo,
  type Ways,
  waysOf,
  wholeTurns,
} from '../phrase/dial.ts'
import { length } from '../phrase/figure.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import { scaleOf } from '../plan/scale.ts'
import { INCH, type Length, MM } from '../units/length.ts'
import { carriageStep } from './carriage.ts'
import { feedOn, restAfter } from './feed.ts'
import type { Scene, StepWords } from './scene.ts'

/** The words for a move of a slide: the dial's words, after the name of the slide. */
export const slideStep = (scene: Scene, slide: Slide): StepWords =>
  (slide === 'carriage' ? carriageStep(scene) : null) ?? dialStep(scene, slide)

const dialStep = (scene: Scene, slide: Slide): StepWords => ({
  thing: slide.toUpperCase(),
  does: does(scene, slide),
  effect: [],
  more: [...meets(scene, slide), ...more(scene, slide)],
  ...first(scene, slide),
  ...(scene.move.action === 'zero' ? { short: [setTo0(scene, slide)] } : {}),
})

/** Once the lost motion is taken up it is too late to wind back. */
const first = (scene: Scene, slide: Slide): Pick<StepWords, 'first'> => {
  const { action, count } = scene.move
  const wind = slide === 'compound' && action === 'take-up' && typeof count !== 'number' ? room(scene) : []
  return wind.length === 0 ? {} : { first: wind }
}

/**
 * Where an infeed that goes more than a turn through the air comes to metal: felt there, and not counted. Down a slant the way to the metal is another one:
 * nothing is told of it.
 */
const meets = (scene: Scene, slide: Slide): Phrase[] => {
  const { move, feature, plan, index, turning } = scene
  const scale = scaleOf(plan, slide)
  const met = feature.trace.met[index]
  if (move.action !== 'feed-in' || slide !== 'cross-feed' || !turning || scale?.kind !== 'dial' || met === undefined)
    return []
  // Coming back from clearing the chip it meets the metal where it was.
  if (move.purpose === 'approach' || feature.operation.moves[index - 1]?.purpose === 'clear-chip') return []
  const end = scene.after[slide] ?? 0
  const contact = met > SEEN ? Math.floor(end - met / travelAt(scale, 1) + 1e-6) : end
  if (contact < 0 || (contact - (scene.before[slide] ?? 0)) * scale.readTo <= marksPerTurn(scale)) return []
  if (met <= SEEN) return [['all the way through the air: it meets no metal yet']]
  return [['meets the metal at ', ...countShown(scale, contact, scene.units), ': gently from there']]
}

/** Nobody feels less: a micrometer. */
const SEEN: Length = 1_000_000

const more = (scene: Scene, slide: Slide): Phrase[] => {
  const { action, purpose } = scene.move
  if (slide === 'cross-feed' && action === 'return' && purpose === 'approach' && !scene.turning)
    return scene.plan.lathe.crossFeedStop === true ? [['set its stop against the slide here']] : []
  if (slide === 'compound' && action === 'feed-in' && purpose === 'approach') return [DOWN_THE_CUT]
  return blends(scene) ? [BLEND] : []
}

/** Turns go by in the air here, with the spindle running: what is felt counts, not the turns. */
const DOWN_THE_CUT: Phrase = ['down what is cut already, in the air: at the first chip stop, even short of the reading']

/** The last two moves of a corner, one on each dial. */
const blends = ({ feature: { operation }, index }: Scene): boolean => {
  const fed = operation.moves.flatMap(({ action, purpose }, i) =>
    action === 'feed-in' && purpose === 'alternate' ? [i] : [],
  )
  return index === fed.at(-1)
}

/** The arc leaves both surfaces so flatly that the eye sees less than the dial shows. Common practice, no source. */
const BLEND: Phrase = [
  'the last of both by halves of a mark, in turn: light along the corner, stop where the arc runs into both surfaces without a line',
]

/**
 * Travel that the slide must have free before its dial is set to 0, rounded up; only if it is more than a turn or so.
 */
const room = ({ feature, plan, units }: Scene): Phrase => {
  const { scale } = plan.lathe.compound
  const counts = feature.operation.moves.flatMap(({ slide, count }) => (slide === 'compound' ? [count ?? 0] : []))
  const [ahead, behind] = [travelAt(scale, Math.max(0, ...counts)), travelAt(scale, -Math.min(0, ...counts))]
  if (ahead + behind <= (units === 'inch' ? INCH / 10 : 2.5 * MM)) return []
  const show = (value: number): Figure => ({
    ...length('along', value, units),
    digits: units === 'inch' ? 2 : 1,
    toward: 'up',
  })
  const parts: Phrase[] = [
    ...(ahead > 0 ? [[show(ahead), ' of travel needed ahead']] : []),
    ...(behind > 0 ? [[show(behind), ahead > 0 ? ' behind' : ' of travel needed behind']] : []),
  ]
  return [
    ahead > 0 ? 'wind it back first: ' : 'wind it forward first: ',
    ...parts.flatMap((part, i) => (i > 0 ? [', ', ...part] : part)),
    '; then ',
  ]
}

/** The cut is fed in by the compound, as in the flank feed of a V; a corner tool only alternates with it. */
const fedByCompound = ({ feature }: Scene): boolean =>
  feature.operation.moves.some(
    ({ action, slide, purpose }) =>
      action === 'feed-in' && slide === 'compound' && (purpose === 'finish' || purpose === 'approach'),
  )

/** A compound that feeds into the work goes forward; that it also goes toward the headstock does not matter here. */
const waysIn = (scene: Scene, slide: Slide): Ways => {
  const ways = waysOf(slide, scene.feature.operation.angle)
  return slide === 'compound' && fedByCompound(scene) ? { ...ways, forward: 'forward' } : ways
}

const does = (scene: Scene, slide: Slide): Phrase => {
  const { action, count } = scene.move
  if (action === 'zero') return zero(scene, slide)
  if (action === 'take-up' && (count === null || count === undefined)) return takeUp(scene, slide)
  if (count === null || count === undefined)
    return [scene.move.purpose === 'to-place' ? 'move to the place' : 'move it']
  return onto(scene, slide, count)
}

const zero = (scene: Scene, slide: Slide): Phrase => [
  scaleOf(scene.plan, slide)?.kind === 'readout'
    ? setTo0(scene, slide)
    : `${setTo0(scene, slide)}, do not move the slide`,
]

const setTo0 = (scene: Scene, slide: Slide): string =>
  `set the ${scaleOf(scene.plan, slide)?.kind === 'readout' ? 'readout' : 'dial'} to\u00a00`

const takeUp = (scene: Scene, slide: Slide): Phrase => {
  const scale = scaleOf(scene.plan, slide)
  const { forward } = waysIn(scene, slide)
  if (scale?.kind !== 'dial') return [`move ${forward} a little`]
  return [`${clearance(scene, slide)}turn ${forward}, `, ...marks(scale, scene.move.takeUp ?? 0), ' or more']
}

/** A swung compound moves the tool into the work as it goes along. */
const clearance = ({ feature }: Scene, slide: Slide): string =>
  slide === 'compound' && feature.operation.angle > 0 ? 'cross-feed well out; then ' : ''

const onto = (scene: Scene, slide: Slide, count: number): Phrase => {
  const scale = scaleOf(scene.plan, slide)
  if (scale === null) return ['move it by hand to the place']
  const ways = waysIn(scene, slide)
  const from = scene.before[slide] ?? 0
  const whole = wholeTurns(scale, from, count)
  if (scene.move.purpose === 'clear-to-measure' && whole !== null && count < from) {
    return [`${ways.back} `, ...turnsOf(whole), ' more, count them']
  }
  if (scene.backFromMeasuring && slide === 'cross-feed' && whole !== null && count > from && scale.kind === 'dial') {
    const mark = markFigure(scale, readingOf(scale, count).mark ?? 0)
    return [
      'IN ',
      ...turnsOf(whole),
      ' to the same mark, ',
      mark,
      ' (',
      readingFigure(scale, Math.abs(readingOf(scale, count).value)),
      count < 0 ? ' out)' : ' in)',
    ]
  }
  if (scene.move.action === 'return' && slide === 'cross-feed' && count === 0 && whole !== null && from < -whole)
    return scene.turning ? ['IN against its stop, onto 0'] : ['IN ', ...turnsOf(whole), ', count them, onto 0']
  return [...turnTo(scale, ways, from, count, scene.units), ...paced(scene, slide), ...restAfter(scene)]
}

/** Where the tool cuts as it goes along or out, and not as it is fed in. Out of its corner it has nothing left to cut. */
const paced = (scene: Scene, slide: Slide): Phrase => {
  if (scene.move.action === 'feed-across') return [', ', ...feedOn(scene, slide)]
  return scene.move.purpose === 'square-shoulder' ? [', ', ...feedOn(scene, slide), ' at first'] : []
}
