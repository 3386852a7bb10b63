import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Scale } from '../lathe/lathe.ts'
import { MOST_MOVES } from '../moves/bounds.ts'
import type { Action, Move, Purpose, Slide } from '../moves/operation.ts'
import { countsPerTurn, pastCount, takeUpCounts } from './dial.ts'

/**
 * Collects the moves of one operation and remembers the reading of each dial, so that a smaller reading is never
 * approached backward.
 */
export type Program = {
  readonly moves: Move[]
  readonly at: Record<Slide, number>
  readonly origin: Origin
}

export const newProgram = (origin: Origin): Program => ({
  moves: [],
  at: { 'cross-feed': 0, compound: 0, carriage: 0 },
  origin,
})

/** Thrown by the first move that is one too many, wherever it is made; `sequence` makes it a refusal. */
export class TooManyMoves extends Error {
  override readonly name = 'TooManyMoves'
}

/** Every move of an operation is added here. */
export function add(program: Program, move: Move): void {
  if (program.moves.length >= MOST_MOVES) throw new TooManyMoves()
  program.moves.push(move)
}

/** A move without a dial. */
export function handMove(program: Program, action: Action, extra: { slide?: Slide; purpose?: Purpose } = {}): void {
  add(program, { action, ...extra, origin: program.origin })
}

/** A dial to an absolute reading. */
export function dialMove(program: Program, action: Action, slide: Slide, count: number, purpose: Purpose): void {
  add(program, { action, slide, count, purpose, origin: program.origin })
  program.at[slide] = count
}

export function takeUp(program: Program, slide: Slide, scale: Scale): void {
  if (scale.kind === 'readout') return
  add(program, {
    action: 'take-up',
    slide,
    count: null,
    takeUp: takeUpCounts(scale),
    purpose: 'set-up',
    origin: program.origin,
  })
}

export function zero(program: Program, slide: Slide): void {
  dialMove(program, 'zero', slide, 0, 'set-up')
}

/**
 * The compound to a place while the tool is clear: forward straight onto it, back only past it by more than the lost
 * motion and then forward.
 */
export function toPlace(program: Program, scale: Scale, count: number): void {
  const now = program.at.compound
  if (count < now && scale.kind === 'dial') {
    dialMove(program, 'go-past', 'compound', pastCount(scale, count), 'to-place')
    dialMove(program, 'return', 'compound', count, 'to-place')
  } else if (count !== now) dialMove(program, 'shift', 'compound', count, 'to-place')
}

/** Spindle off, and out of the way by whole turns: room for the hands. */
export function stopAway(program: Program, scale: Scale, backOut: number, away: number): void {
  handMove(program, 'stop')
  outToMeasure(program, scale, backOut, away)
}

/** Further out, by whole turns. */
export function outToMeasure(program: Program, scale: Scale, backOut: number, away: number): void {
  const turn = countsPerTurn(scale)
  const far = turn === null ? backOut - away : backOut - Math.ceil(away / turn) * turn
  dialMove(program, 'back-out', 'cross-feed', far, 'clear-to-measure')
}

/**
 * Out of the way by whole turns, spindle off, measure, back to the same mark, and the spindle on by `begin`. Nobody
 * measures beside a tool that is just off the work.
 */
export function measureStop(
  program: Program,
  scale: Scale,
  backOut: number,
  away: number,
  expect: Purpose,
  last: boolean,
  begin: () => void = () => handMove(program, 'start'),
): void {
  stopAway(program, scale, backOut, away)
  handMove(program, 'measure', { purpose: expect })
  if (last) return
  dialMove(program, 'return', 'cross-feed', backOut, 'come-back')
  begin()
}
