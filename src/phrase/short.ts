import type { Dial, Scale } from '../lathe/lathe.ts'
import type { Slide } from '../moves/operation.ts'
import { marksPerTurn, pastZero, shownBefore, shownOn, turnsOf, zerosPassed } from './dial.ts'
import type { Phrase } from './phrase.ts'

/** A turn of a dial for a table: the zeros on the way, and where it stops. The way itself is said by the column. */
export type Short = { readonly passing: Phrase; readonly at: Phrase }

/** From one reading to another, both in readable steps from zero. `from`: null if the dial was not read before. */
export const shortTurn = (scale: Scale, slide: Slide, from: number | null, to: number): Short => {
  if (scale.kind === 'readout') return { passing: [], at: shownOn(scale, to) }
  return { passing: passing(scale, from ?? 0, to), at: at(scale, slide, to) }
}

const passing = (dial: Dial, from: number, to: number): Phrase => {
  const perTurn = marksPerTurn(dial) / dial.readTo
  const onZero = to % perTurn === 0
  if (from === 0 && to <= -perTurn) return [...turnsOf(Math.floor(-to / perTurn)), onZero ? ', onto' : ', on to']
  const times = zerosPassed(dial, from, to)
  if (times === 0) return []
  const [first, ...rest] = pastZero(times)
  return [
    typeof first === 'string' ? first.trimStart() : first!,
    ...rest,
    onZero && to <= 0 ? ', onto the next' : ', to',
  ]
}

const at = (dial: Dial, slide: Slide, to: number): Phrase =>
  to >= 0 ? shownOn(dial, to) : shownBefore(dial, to, slide === 'cross-feed' ? 'out' : 'before 0')
