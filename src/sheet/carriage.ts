import { travelAt } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import { isOnLine } from '../moves/placing.ts'
import { marks, readingFigure, shownOn } from '../phrase/dial.ts'
import { length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { INCH, MM } from '../units/length.ts'
import { lockWords } from './hand.ts'
import type { Scene, StepWords } from './scene.ts'

/** What is done with the carriage besides turning it to a reading; null if it is only that. */
export const carriageStep = (scene: Scene): StepWords | null => {
  const { action, place, count } = scene.move
  const say = (does: Phrase, thing = 'CARRIAGE', more: readonly Phrase[] = []): StepWords => ({
    thing,
    does,
    effect: [],
    more,
  })
  if (action === 'lock') return say(locked(scene))
  if (action === 'unlock')
    return beforeDeburring(scene)
      ? { ...say(['unlock, run the tool well away from the work']), short: ['unlock, tool well away'] }
      : say(['unlock'])
  if (place !== undefined) return say(toLine(scene, place), 'CARRIAGE', action === 'feed-across' ? [SIGHTED] : [])
  if (action === 'zero' && onIndicator(scene))
    return say(['bears on the carriage, set it to 0'], 'INDICATOR', [room(scene)])
  if (action === 'take-up' && typeof count !== 'number') return say(ontoLine(scene))
  return null
}

/** Nobody files beside an edge. Filing on the lathe with the carriage out of the way: Modern Metalworking, p. 454. */
const beforeDeburring = ({ feature, index }: Scene): boolean => feature.operation.moves[index + 1]?.action === 'deburr'

/** A face near running work. Goggles or shield at a running lathe at all times: US Navy engine training manual. */
const SIGHTED: Phrase = ['watch with the shield down; STOP the spindle to look closely']

const onIndicator = ({ plan: { lathe } }: Scene): boolean =>
  lathe.carriage?.kind === 'readout' && lathe.carriage.range !== undefined

/** Locking shifts the carriage: what it was brought to is checked again. */
const locked = (scene: Scene): Phrase => {
  const { feature, index, plan, after } = scene
  const moved = feature.operation.moves[index - 1]
  if (moved?.slide !== 'carriage' || moved.action === 'take-up') return [lockWords(scene)]
  if (moved.place !== undefined)
    return moved.purpose === 'headstock-line' ? ['LOCK, then look at both lines'] : ['LOCK']
  if (plan.lathe.carriage === null) return ['LOCK']
  // A measured width may have sent it to another reading than the written one.
  if (moved.action === 'feed-across') {
    const shows = onIndicator(scene) ? 'indicator' : plan.lathe.carriage.kind
    return [`LOCK, then see that the ${shows} has stayed where it was`]
  }
  const words = onIndicator(scene)
    ? 'LOCK, then see that the indicator still shows '
    : 'LOCK, then see that it is still on '
  return [words, ...shownOn(plan.lathe.carriage, after.carriage ?? 0)]
}

/** Its plunger must follow all the travel on the sheet. */
const room = ({ feature, plan, units }: Scene): Phrase => {
  const scale = plan.lathe.carriage
  if (scale === null) return []
  const counts = feature.operation.moves.flatMap(({ slide, count }) => (slide === 'carriage' ? [count ?? 0] : []))
  const way = (most: number, toward: string): Phrase[] =>
    most > 0 ? [[length('along', travelAt(scale, most), units), ` toward the ${toward}`]] : []
  const ways = [...way(Math.max(0, ...counts), 'headstock'), ...way(-Math.min(0, ...counts), 'tailstock')]
  if (ways.length === 0) return ['it only watches that the carriage stays']
  return ['with room to follow ', ...ways.flatMap((one, i) => (i > 0 ? [' and ', ...one] : one))]
}

/**
 * The carriage is already in its place: it goes back and comes onto it again in the direction in which it will move.
 */
const ontoLine = (scene: Scene): Phrase => {
  const scale = scene.plan.lathe.carriage
  const touch = !isOnLine(scene.feature.operation.placing)
  if (scale?.kind !== 'dial')
    return [`toward the headstock ${touch ? 'until it touches again' : 'onto the line again'}`]
  return [
    `away from the ${touch ? 'face' : 'line'} toward the tailstock, at least `,
    ...marks(scale, scene.move.takeUp ?? 0),
    touch ? ', then back until it touches' : ', then back onto it',
  ]
}

/** By eye: there is no reading, only what is seen. The lines are the first and the last that were scribed. */
const toLine = ({ move, feature, units }: Scene, place: number): Phrase => {
  const { layout, operation } = feature
  const line = layout.at(move.purpose === 'tailstock-line' ? 0 : -1)
  if (move.action === 'feed-across' && line !== undefined) {
    const toward = move.purpose === 'tailstock-line' ? 'tailstock' : 'headstock'
    return [
      `feed by hand, slowly, toward the ${toward} until the cut meets the `,
      length('place', line.fromEnd, units),
      ' line',
    ]
  }
  const places = operation.moves.flatMap((one) => (one.purpose === 'between-lines' ? [one.place ?? 0] : []))
  const [first, last] = [Math.min(...places), Math.max(...places)]
  if (first === last) return ['by eye until the tool is midway between the lines']
  const flat = feature.edge.width ?? feature.edge.nose ?? 0
  const inside = (side: string, other: string, by: number): Phrase => [
    `by eye until the ${side}-side corner is ${by <= eyeCanJudge(units) ? 'a hair (' : 'about '}`,
    length('place', by, units),
    `${by <= eyeCanJudge(units) ? ')' : ''} to the ${other} side of the ${side} line`,
  ]
  if (place === first) return inside('tailstock', 'headstock', place - (layout.at(0)?.fromEnd ?? place))
  if (place === last) return inside('headstock', 'tailstock', (layout.at(-1)?.fromEnd ?? place) - place - flat)
  return ['by eye toward the headstock, the cut overlapping the last one']
}

/** What the eye can judge beside a line without measuring. Common practice, no source. */
const eyeCanJudge = (units: Scene['units']): number => (units === 'inch' ? INCH / 100 : MM / 4)

/**
 * How the carriage moves the tool along, for the block above the steps; null if it does not. `dial`: the words for a
 * scale.
 */
export const carriageWords = (
  { lathe, units }: Scene['plan'],
  { operation }: Scene['feature'],
  dial: (scale: Scale) => Phrase,
): Phrase | null => {
  if (!byCarriage(operation)) return null
  if (operation.moves.some(({ place }) => place !== undefined))
    return ['moves the tool along, to the scribed lines by eye: within ', length('along', lathe.accuracy.layout, units)]
  const { carriage } = lathe
  if (carriage === null) return null
  if (carriage.kind !== 'readout' || carriage.range === undefined) return ['moves the tool along; ', ...dial(carriage)]
  return [
    'moves the tool along; indicator on it, steps of ',
    { ...readingFigure(carriage, carriage.resolution), role: 'dial' },
    ', follows ',
    { ...readingFigure(carriage, carriage.range), role: 'dial' },
  ]
}

/** True if something other than its lock is done to the carriage. */
export const byCarriage = ({ moves }: Pick<Scene['feature']['operation'], 'moves'>): boolean =>
  moves.some(({ slide, action }) => slide === 'carriage' && !LOCKS.has(action))

const LOCKS: ReadonlySet<string> = new Set(['lock', 'unlock'])
