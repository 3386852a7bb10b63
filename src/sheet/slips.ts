import type { Instrument } from '../moves/operation.ts'
import { dimensionFigure } from '../phrase/dimensions.ts'
import { identify, length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import type { Plan } from '../plan/plan.ts'
import type { Mistake } from '../slips/mistakes.ts'
import type { Ridge } from '../slips/ridge.ts'
import type { Change, Slip } from '../slips/slips.ts'
import type { Units } from '../units/length.ts'
import { byCarriage } from './carriage.ts'
import type { Planned } from './scene.ts'
import type { SlipCard } from './sheet.ts'
import { signsOf } from './signs.ts'

/** For each planned feature what the single mistakes on it would measure, and which mistakes they are. */
export const slipCards = (plan: Plan, slips: readonly (readonly Slip[])[]): SlipCard[] => {
  const planned = plan.features.flatMap((feature, index) => (feature.status === 'planned' ? [{ feature, index }] : []))
  return planned.map(({ feature, index }, i) => ({
    feature: index,
    name: feature.name,
    lines: slips[i]!.map((slip, line) => lineOf(plan, feature, slip, `slip.${index + 1}.${line + 1}`)),
    signs: signsOf(plan, feature).map((sign, n) => identify(`slip.${index + 1}.sign.${n + 1}`, sign)),
  }))
}

const lineOf = (plan: Plan, feature: Planned, slip: Slip, place: string): SlipCard['lines'][number] => ({
  shows: identify(place, measuredWords(slip, plan.units)),
  mistake: slip.mistakes
    .map((mistake) => `${mistakeWords(mistake, plan, feature)}${whereOf(mistake, feature)}`)
    .join(', or '),
})

/** If the finish is made at several places, the one at which the mistake was made. */
const whereOf = (mistake: Mistake, { operation: { moves } }: Planned): string => {
  if (mistake === 'place-left-out' || mistake === 'place-backward') return ', a quarter of the way along'
  if (mistake === 'turn-more-along' || mistake === 'tool-width-forgotten')
    return finishedPlaces(moves) > 1 ? ', at the furthest place' : ''
  const last = mistake === 'turn-more' || mistake === 'numbers-misread'
  return last && finishedPlaces(moves) > 1 ? ', at the last place' : ''
}

/** How often the finish goes in by the cross-feed, out and along, and in again. */
const finishedPlaces = (moves: Planned['operation']['moves']): number =>
  moves.filter(
    ({ action, slide }, i) =>
      action === 'back-out' &&
      slide === 'cross-feed' &&
      moves[i - 1]?.action === 'feed-in' &&
      finishesIn(moves[i - 1]!),
  ).length

const finishesIn = ({ slide, purpose }: Planned['operation']['moves'][number]): boolean =>
  slide === 'cross-feed' && purpose === 'finish'

const measuredWords = ({ changes, ridge }: Slip, units: Units): Phrase => {
  const parts = [...changes.map((change) => changed(change, units)), ...(ridge === null ? [] : [left(ridge, units)])]
  return parts.flatMap((part, i) => (i === 0 ? part : [', ', ...part]))
}

/** Before the figure the size that is measured, after it the way in which it is wrong. */
const changed = ({ id, by }: Change, units: Units): Phrase => {
  const [what, more, less] = WORDS[id]
  return [`${what} `, dimensionFigure('expected', id, Math.abs(by), units), ` ${by > 0 ? more : less}`]
}

const WORDS: Readonly<Record<Instrument, readonly [what: string, more: string, less: string]>> = {
  width: ['width', 'wide', 'narrow'],
  depth: ['depth', 'deep', 'shallow'],
  bottomDiameter: ['bottom', 'large', 'small'],
  near: ['near edge', 'toward the headstock', 'toward the free end'],
  far: ['far edge', 'toward the headstock', 'toward the free end'],
  center: ['center', 'toward the headstock', 'toward the free end'],
  root: ['flat at the root', 'wide', 'narrow'],
  angle: ['angle', 'open', 'closed'],
  flatness: ['floor', 'out of flat', 'flatter'],
  radius: ['radius', 'large', 'small'],
  cornerRadius: ['corner radius', 'large', 'small'],
  legAlong: ['leg along the work', 'long', 'short'],
  legDown: ['leg down the face', 'deep', 'shallow'],
}

const left = ({ high, wide, side }: Ridge, units: Units): Phrase => [
  'step of ',
  length('expected', high, units),
  ' left in the form, ',
  length('expected', wide, units),
  ` wide${side === null ? '' : `, on the ${side} side`}`,
]

const mistakeWords = (mistake: Mistake, { lathe }: Plan, { operation }: Planned): string => {
  // If the carriage moves the tool along, the mistakes of the compound are made with the carriage.
  const along = byCarriage(operation) ? 'carriage' : 'compound'
  if (mistake === 'sense-mistaken')
    return lathe.crossFeed.reads === 'depth'
      ? 'the depth dial was taken for one that reads diameter'
      : 'the diameter dial was taken for one that reads depth'
  if (mistake === 'other-scale-zero')
    return lathe.compound.scaleZero === 'square'
      ? 'the compound was set from parallel, and 0 on its scale is square'
      : 'the compound was set from square, and 0 on its scale is parallel'
  if (mistake === 'backlash-left') {
    const often = operation.moves.filter(({ action }) => action === 'go-past').length > 1
    return `backlash not taken up${often ? ', every time' : ''}: the ${along} was turned straight back (so much at the most)`
  }
  if (mistake === 'shift-forgotten') return `the shift of the ${along} was forgotten`
  if (mistake === 'turn-more-along') return `one turn of the ${along} too many`
  return MISTAKE_WORDS[mistake]
}

type Worded = 'sense-mistaken' | 'other-scale-zero' | 'backlash-left' | 'shift-forgotten' | 'turn-more-along'

const MISTAKE_WORDS: Readonly<Record<Exclude<Mistake, Worded>, string>> = {
  'turn-more': 'one turn of the cross-feed too many',
  'turn-less': 'one turn of the cross-feed too few',
  'numbers-misread': 'ten marks too far: the next number on the dial',
  'finish-forgotten': 'the finish pass was forgotten',
  'tool-width-forgotten': 'shifted by the whole width: the width of the tool was forgotten',
  'swing-forgotten': 'the depth was not corrected for the swung compound',
  'place-left-out': 'a place was left out',
  'next-line-read': 'every depth was read one line too far down',
  'place-backward': 'a place was come to backward: past it and straight back (so much at the most)',
  'turn-less-down': 'one turn of the compound too few at the finish',
  'back-turn-short': 'the compound came back one turn short: past 0 once too few',
  'not-turned-back': 'the compound was not turned back before the cross-feed came in',
  'other-side-of-square': 'the compound was set on the other side of 0: toward the tailstock',
  'wrong-side': 'the compound was swung to the wrong side',
  'short-of-zero': 'the cross-feed was brought in one turn short, every time',
  'touched-burr': 'touched off on a burr, or on dye and oil',
  'wrong-corner': 'the wrong corner of the tool was set to the line',
  'measured-behind': 'the tool was measured behind its edge, where it is relieved',
  'worn-corners': 'the corners of the tool are worn round',
  askew: 'the tool stood askew by a degree',
}
