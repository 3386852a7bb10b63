import type { Dial, Scale } from '../lathe/lathe.ts'
import { readable } from '../lathe/lathe.ts'
import type { Slide } from '../moves/operation.ts'
import type { Length, Units } from '../units/length.ts'
import { inUnits } from '../units/length.ts'
import { decimals, figure } from './figure.ts'
import { type Figure, HELD, type Phrase } from './phrase.ts'

/** A reading as the scale shows it: pm of reading in its own sense, and turns (floor) and mark for a dial. */
export type Reading = { readonly value: Length; readonly turns: number | null; readonly mark: number | null }

/** The words for the two ways of turning. */
export type Ways = { readonly forward: string; readonly back: string; readonly away: string }

export const readingOf = (scale: Scale, count: number): Reading => {
  const value = count * readable(scale)
  if (scale.kind === 'readout') return { value, turns: null, mark: null }
  const marks = count * scale.readTo
  const turns = Math.floor(marks / marksPerTurn(scale))
  return { value, turns, mark: marks - turns * marksPerTurn(scale) }
}

export const marksPerTurn = (dial: Dial): number => Math.round(dial.perTurn / dial.graduation)

/** A compound near square to the ways no longer goes toward the headstock: then its way is just forward. */
export const waysOf = (slide: Slide, angle: number): Ways => {
  if (slide === 'cross-feed') return { forward: 'in', back: 'OUT', away: 'out' }
  if (slide === 'carriage') return { forward: 'toward the headstock', back: 'toward the tailstock', away: 'before 0' }
  return { forward: angle > 80 || angle < -80 ? 'forward' : 'toward the headstock', back: 'back', away: 'before 0' }
}

/** How to turn from one reading to another, both in readable steps from zero. */
export const turnTo = (scale: Scale, ways: Ways, from: number, to: number, units: Units): Phrase => {
  if (scale.kind === 'readout') return onReadout(scale, ways, from, to)
  if (to === from) return ['leave it at ', ...target(scale, to), ...aside(scale, to, units)]
  if (to > from)
    return [ways.forward, ...zerosForward(scale, from, to), ...landing(scale, ways, to, units), ...on(scale, from, to)]
  if (to >= 0) return backTo(scale, ways, from, to, units)
  return [ways.back, ...past(scale, from, to), ...landing(scale, ways, to, units)]
}

/** Back to a reading at or after zero: the 0 of the dial, and the mark itself, pass once a turn on the way. */
const backTo = (dial: Dial, ways: Ways, from: number, to: number, units: Units): Phrase => {
  const passed = zerosBetween(marksPerTurn(dial) / dial.readTo, to, from)
  if (passed === 0) return [ways.back, to === 0 ? ' onto ' : ' to ', ...landing(dial, ways, to, units)]
  const by: Phrase = [ways.back, ...pastZero(passed)]
  if (to === 0) return [...by, ', onto the next ', ...target(dial, 0)]
  if (readingOf(dial, to).turns) return [...by, ', to ', ...landing(dial, ways, to, units)]
  // A mark that it goes to past 0 is easily taken for one on the other side of the 0 that was set.
  const after = held(dial.reads === 'diameter' ? ' by the dial after the set 0' : ' after the set 0')
  return [...by, ', to ', ...target(dial, to), ' (', readingFigure(dial, to * readable(dial)), after, ')']
}

/** How often the 0 of a dial is passed. */
export const pastZero = (times: number): Phrase =>
  times === 1 ? [' past 0'] : [' past 0 (', figure('turns', times, 'count'), ' times)']

/** A reading alone, as the scale shows it; forms are finished at or after zero. */
export const shownOn = (scale: Scale, to: number): Phrase =>
  scale.kind === 'readout' ? [readingFigure(scale, to * readable(scale))] : target(scale, to)

/** A reading alone, with the figure of it where its marks are not clear: "1 turn and 35 (.135)". */
export const countShown = (scale: Scale, to: number, units: Units): Phrase =>
  scale.kind === 'readout' ? shownOn(scale, to) : [...target(scale, to), ...aside(scale, to, units)]

/** The mark at which the dial stops, and its reading: "52", "1 turn and 0 (.100)", "50 (.050 out, half a turn)". */
const landing = (dial: Dial, ways: Ways, to: number, units: Units): Phrase =>
  to >= 0
    ? [...target(dial, to), ...aside(dial, to, units)]
    : [
        ...markAt(dial, to),
        ' (',
        ...outBy(dial, ways.away, to),
        ...partOfTurn((-to * readable(dial)) / dial.perTurn),
        ')',
      ]

/** A reading before zero: "90 (.010 before 0)". */
export const shownBefore = (dial: Dial, to: number, away = 'before 0'): Phrase => [
  ...markAt(dial, to),
  held(' ('),
  ...outBy(dial, away, to),
  ')',
]

const markAt = (dial: Dial, to: number): Phrase => [...markWord(dial), markFigure(dial, readingOf(dial, to).mark ?? 0)]

/** How far from the true zero: a length, since the 0 of the dial comes by once a turn. */
const outBy = (dial: Dial, away: string, to: number): Phrase => [
  readingFigure(dial, -to * readable(dial)),
  held(dial.reads === 'diameter' ? ` ${away} by the dial` : ` ${away}`),
]

/** Whole turns between two readings, or null if they are not whole. */
export const wholeTurns = (scale: Scale, from: number, to: number): number | null => {
  if (scale.kind === 'readout') return null
  const turns = (Math.abs(to - from) * scale.readTo) / marksPerTurn(scale)
  return Number.isInteger(turns) && turns > 0 ? turns : null
}

export const markFigure = (dial: Dial, mark: number): Figure =>
  figure('mark', mark, 'mark', dial.readTo < 1 ? decimals(mark, 0, 4) : 0)

/** A number of marks, as "11 marks" or "1 mark". */
export const marks = (dial: Dial, count: number): Phrase => [
  { ...markFigure(dial, count * dial.readTo), role: 'take-up' },
  held(count * dial.readTo === 1 ? ' mark' : ' marks'),
]

/** A reading as a figure in the scale's own units and sense. */
export const readingFigure = (scale: Scale, value: Length): Figure => {
  const plain = inUnits(value, scale.units)
  const step = inUnits(readable(scale), scale.units)
  return figure(
    'reading',
    plain,
    scale.units,
    decimals(plain, Math.max(scale.units === 'inch' ? 3 : 2, decimals(step, 0, 5)), 5),
  )
}

/** Readings at or after zero: "52", "1 turn and 25", "2 turns and 0". */
const target = (dial: Dial, to: number): Phrase => {
  const { turns, mark } = readingOf(dial, to)
  if (!turns) return [...markWord(dial), markFigure(dial, mark ?? 0)]
  const whole = [figure('turns', turns, 'turn'), held(turns === 1 ? ' turn' : ' turns')]
  return [...whole, held(' and '), ...markWord(dial), markFigure(dial, mark ?? 0)]
}

/** The 0 of a dial is passed once a turn: on the way out, how often; from the true 0, how many turns. */
export const past = (dial: Dial, from: number, to: number): Phrase => {
  const perTurn = marksPerTurn(dial) / dial.readTo
  const stop = to % perTurn === 0 ? 'stop on the next ' : 'stop at '
  if (from === 0 && to <= -perTurn)
    return [' ', ...turnsOf(Math.floor(-to / perTurn)), to % perTurn === 0 ? ' from 0, onto ' : ' from 0 and on to ']
  if (from === 0) return [' from 0 to ']
  const passed = zerosBetween(perTurn, to, from)
  if (passed === 0) return [`, ${stop}`]
  return [...pastZero(passed), `, ${stop}`]
}

/**
 * Forward from before zero, the dial shows its 0 at least once before a reading after zero. From more than a turn
 * before zero it shows a 0 that is not the zero. Each of these is printed, because a machinist who stops at the first
 * matching mark stops too early. The same applies more than a turn after zero.
 */
export const zerosForward = (dial: Dial, from: number, to: number): Phrase => {
  const passed = zerosPassed(dial, from, to)
  if (to === 0) return passed === 0 ? [' onto '] : [...pastZero(passed), ', onto the next ']
  return passed === 0 ? [' to '] : [...pastZero(passed), ', to ']
}

/** Between two readings after zero, more than a turn apart: how far the target is from the present reading. */
const on = (dial: Dial, from: number, to: number): Phrase =>
  from > 0 && readingOf(dial, to).turns ? [', ', ...marks(dial, to - from), ' on'] : []

/** How often the 0 of a dial is passed on the way, as it is printed: from its true 0 outward that one is left, not passed. */
export const zerosPassed = (dial: Dial, from: number, to: number): number => {
  const perTurn = marksPerTurn(dial) / dial.readTo
  if (to < from) return zerosBetween(perTurn, to, from)
  const early = from < 0 ? zerosBetween(perTurn, from, Math.min(to, 0)) : 0
  if (from < 0 && to > 0) return early + 1
  return from > 0 && to - from > perTurn ? zerosBetween(perTurn, from, to) : early
}

/** Whole turns strictly between two readings, low and high. */
const zerosBetween = (perTurn: number, low: number, high: number): number =>
  Math.max(0, Math.ceil(high / perTurn) - 1 - Math.floor(low / perTurn))

export const turnsOf = (whole: number): Phrase => [
  figure('turns', whole, 'turn'),
  held(whole === 1 ? ' whole turn' : ' whole turns'),
]

/**
 * In parentheses if the marks alone are not clear: several turns, a dial in other units, of the other sense, or not in
 * thousandths.
 */
const aside = (dial: Dial, to: number, units: Units): Phrase => {
  const { value, turns } = readingOf(dial, to)
  if (!turns && plainDial(dial, units)) return []
  if (value === 0) return []
  return [' (', readingFigure(dial, value), held(dial.reads === 'diameter' ? ' on the dial)' : ')')]
}

/** Only parts of a turn that a hand can feel: quarters. */
const partOfTurn = (turns: number): Phrase => {
  if (!Number.isInteger(turns * 4)) return []
  const name = PARTS[turns]
  if (name !== undefined) return [held(', '), { ...figure('turns', turns, 'turn', 2), text: held(name) }]
  return [held(', '), figure('turns', turns, 'turn', decimals(turns, 0, 2)), held(turns === 1 ? ' turn' : ' turns')]
}

const PARTS: Readonly<Record<number, string>> = {
  0.25: 'a quarter turn',
  0.5: 'half a turn',
  0.75: 'three quarters of a turn',
}

/** Text of one reading stays on one line: its blanks become no-break spaces. */
const held = (text: string): string => text.replaceAll(' ', HELD)

/** Marks of .001 in or .01 mm show their own value; on any other dial the marks are counted, and called marks. */
const plainDial = (dial: Dial, units: Units): boolean =>
  dial.units === units && dial.reads === 'depth' && thousandths(dial)
const thousandths = (dial: Dial): boolean =>
  inUnits(dial.graduation, dial.units) === (dial.units === 'inch' ? 0.001 : 0.01)
export const markWord = (dial: Dial): Phrase => (thousandths(dial) ? [] : [held('mark ')])

const onReadout = (scale: Scale, ways: Ways, from: number, to: number): Phrase => {
  if (scale.kind === 'readout' && scale.range !== undefined) {
    const toward = to === from ? 'leave it where' : `${to > from ? ways.forward : ways.back} until`
    return [`${toward} the indicator shows `, readingFigure(scale, to * readable(scale))]
  }
  const way = to === from ? 'leave it at' : to > from ? `${ways.forward} to` : `${ways.back} to`
  return [
    `${way} `,
    readingFigure(scale, to * readable(scale)),
    ` on the readout${scale.reads === 'diameter' ? ' (diameter)' : ''}`,
  ]
}
