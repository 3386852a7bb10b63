import type { Dial } from '../lathe/lathe.ts'
import type { Move, Slide } from '../moves/operation.ts'
import {
  countShown,
  markFigure,
  markWord,
  past,
  readingOf,
  shownBefore,
  shownOn,
  turnTo,
  waysOf,
  zerosForward,
} from '../phrase/dial.ts'
import { identify, length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import type { Plan } from '../plan/plan.ts'
import { scaleOf } from '../plan/scale.ts'
import { type Planned, placeOf, type Scene, scenesOf } from './scene.ts'
import type { SheetStep } from './sheet.ts'

/** All the moves of one place of a form cut step by step, or of one series of pecks, printed on one line. */
export type FoldedPlace = {
  readonly kind: 'station' | 'pecks'
  /** The numbers of its first and its last step. */
  readonly from: number
  readonly to: number
  readonly thing: string
  readonly does: Phrase
  /** Printed if there is room for it. */
  readonly effect: Phrase
}

/**
 * Lines that a printer may print instead of the single steps, which remain steps; none unless a form is cut step by
 * step.
 */
export const placesOf = (plan: Plan, feature: Planned, steps: readonly SheetStep[]): FoldedPlace[] => {
  const { moves, cusp } = feature.operation
  const scenes = scenesOf(plan, feature)
  const places: FoldedPlace[] = []
  for (let i = 0; i < moves.length; i++) {
    const end = cusp === undefined ? endOfPecks(moves, i) : endOfPlace(moves, i)
    if (end === null || steps[i]!.group !== steps[end]!.group) continue
    const own = scenes.slice(i, end + 1)
    const numbers = { from: steps[i]!.number, to: steps[end]!.number }
    places.push({
      ...numbers,
      ...(cusp === undefined ? pecks : station)(own, numbers.from, places),
    })
    i = end
  }
  return places
}

/** In, out to clear the chip, in further, and out: the index of the last back-out, or null if no series begins here. */
const endOfPecks = (moves: readonly Move[], start: number): number | null => {
  let i = start
  while (moves[i] !== undefined && (feedsIn(moves[i]!) || (i > start && clearsChip(moves[i]!)))) i++
  const within = moves.slice(start, i)
  return within.some(clearsChip) && moves[i]?.action === 'back-out' && moves[i]!.purpose === 'clear' ? i : null
}

const clearsChip = ({ action, purpose }: Move): boolean => action === 'back-out' && purpose === 'clear-chip'

/**
 * Over (unless it is already there), in once or by infeeds, out: the index of the back-out, or null if no place begins
 * here.
 */
const endOfPlace = (moves: readonly Move[], start: number): number | null => {
  let i = start
  if (moves[i]!.action === 'shift') i++
  const firstIn = i
  while (moves[i] !== undefined && (feedsIn(moves[i]!) || (i > firstIn && clearsChip(moves[i]!)))) i++
  return i > firstIn && moves[i]?.action === 'back-out' && moves[i]!.purpose === 'clear' ? i : null
}

const feedsIn = ({ action, slide, purpose }: Move): boolean =>
  action === 'feed-in' && slide === 'cross-feed' && (purpose === 'rough' || purpose === 'finish')

type Folded = Omit<FoldedPlace, 'from' | 'to'>

/** How to go out is told with the first series. "in to 45, 90; OUT; to 1 turn and 35 (.135), 1 turn and 75 (.175); OUT": each reading from the set 0, each way out the same. */
const pecks = (scenes: readonly Scene[], from: number, before: readonly FoldedPlace[]): Folded => {
  const deepest = scenes[scenes.length - 2]!
  const last = scenes.at(-1)!
  const scale = scaleOf(last.plan, 'cross-feed')!
  const series = scenes.slice(0, -1).flatMap((scene, i): Phrase => {
    if (scene.move.action === 'back-out') return ['; OUT']
    const before = scenes[i - 1]
    const lead = before === undefined ? 'in by pecks to ' : before.move.action === 'back-out' ? '; in to ' : ', '
    return [lead, ...countShown(scale, scene.after['cross-feed'] ?? 0, scene.units)]
  })
  // From anywhere in the slot: just below the surface the 0 is passed once.
  const out = turnTo(scale, waysOf('cross-feed', 0), 1, last.after['cross-feed'] ?? 0, last.units)
  return {
    kind: 'pecks',
    thing: 'CROSS-FEED',
    does: identify(`place.${from}.does`, [
      ...series,
      '; each time ',
      ...out,
      before.length === 0
        ? ': past the set 0, the edge seen clear of the work; the chip falls, hands off; coming back the handle feels the metal'
        : ': past the set 0, the edge clear',
    ]),
    effect: identify(`place.${from}.effect`, [
      length('depth', placeOf(deepest, deepest.after).deep, deepest.units),
      ' deep',
    ]),
  }
}

const station = (scenes: readonly Scene[], from: number, before: readonly FoldedPlace[]): Folded => {
  const nth = before.length + 1
  const deepest = scenes[scenes.length - 2]!
  const words = scenes.flatMap(
    (scene, i): Phrase => [...(i > 0 ? [separator(scene, scenes[i - 1]!)] : []), ...one(scene, scenes[i - 1] ?? null)],
  )
  return {
    kind: 'station',
    thing: `STATION ${nth}`,
    does: identify(`place.${from}.does`, words),
    effect: identify(`place.${from}.effect`, [
      length('depth', placeOf(deepest, deepest.after).deep, deepest.units),
      ' deep',
    ]),
  }
}

/** Between the slides a semicolon, between infeeds of one slide a comma. */
const separator = (scene: Scene, before: Scene): string =>
  scene.move.action === 'feed-in' && before.move.action === 'feed-in' ? ', ' : '; '

/** "to 37", "in past 0, to 1 turn and 12", "OUT past 0, stop at 50"; an infeed after an infeed is just "to 60". */
const one = (scene: Scene, before: Scene | null): Phrase => {
  const slide = scene.move.slide as Slide
  const scale = scaleOf(scene.plan, slide)!
  const [now, next] = [scene.before[slide] ?? 0, scene.after[slide] ?? 0]
  const words = scale.kind === 'readout' ? [' to ', ...shownOn(scale, next)] : onDial(scale, now, next)
  if (scene.move.action === 'back-out') return ['OUT', ...words]
  if (scene.move.action === 'shift' || before?.move.action === 'feed-in') return trimmed(words)
  return ['in', ...words]
}

const onDial = (dial: Dial, now: number, next: number): Phrase => {
  if (next < now) return [...past(dial, now, next), ...before0(dial, next, false)]
  return [
    ...zerosForward(dial, now, next),
    ...(next < 0 ? before0(dial, next, true) : next === 0 ? ['0'] : shownOn(dial, next)),
  ]
}

/** The mark on the dial before its zero, and how far before zero it is. */
const before0 = (dial: Dial, count: number, counted: boolean): Phrase => {
  if (counted) return shownBefore(dial, count)
  return [...markWord(dial), markFigure(dial, readingOf(dial, count).mark ?? 0)]
}

const trimmed = ([first, ...rest]: Phrase): Phrase => [typeof first === 'string' ? first.trimStart() : first!, ...rest]
