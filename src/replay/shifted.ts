import type { Lathe } from '../lathe/lathe.ts'
import type { Move, Operation, Setup } from '../moves/operation.ts'
import type { OperationTrace, Size } from '../moves/trace.ts'
import { type Before, type Bench, type Gathered, type Shift, setUp } from './bench.ts'
import { type Halfway, movesAsOne } from './halfway.ts'
import { carryOut, ran, sizesNow } from './run.ts'

/**
 * An operation without an error, replayed once. `shifted`: its sizes with one shift. Runs share a prefix: each is forked at the first move that its
 * shift affects. `whole`: everything that the edge has passed through, if an error of a zero moves all of that together.
 */
export type Right = {
  readonly trace: OperationTrace
  readonly whole: Halfway | null
  readonly shifted: (shift: Shift) => readonly Size[]
}

export const madeRight = (lathe: Lathe, setup: Setup, operation: Operation, before: Before): Right => {
  const { moves } = operation
  const nothing: Gathered['surely'] = []
  const gathered = movesAsOne(operation, moves.length) ? { surely: nothing, possibly: nothing } : null
  const bench: Bench = { ...setUp(lathe, setup, operation, before, { rules: false, shift: null }), gathered }
  const until = new Map<number, Bench>()
  const used = new Set<string>()
  moves.forEach((move, index) => {
    const reading = readingOf(move)
    if (reading !== null && !used.has(reading)) until.set(index, parted(bench, null))
    if (reading !== null) used.add(reading)
    carryOut(bench, move, index)
  })
  const { trace } = ran(bench)
  const shifted = (shift: Shift): readonly Size[] => {
    const first = moves.findIndex((move) => bearsOn(shift, move))
    return first < 0 ? trace.sizes : goneOn(parted(until.get(first)!, shift), first)
  }
  return { trace, whole: gathered === null ? null : { bench, gathered, index: moves.length }, shifted }
}

/** What a shift can affect: a reading of a dial, or a place found by eye. */
const readingOf = ({ slide, count, place }: Move): string | null =>
  typeof count === 'number' || place !== undefined ? `${slide} ${count} ${place}` : null

const bearsOn = (shift: Shift, move: Move): boolean => {
  if (move.slide !== undefined && move.slide !== shift.slide) return false
  if (!('count' in shift)) return move.place === shift.place
  return shift.count === 'every' ? typeof move.count === 'number' : move.count === shift.count
}

/** A copy of the lathe in the middle of an operation. Without the rules no records are kept that would have to be copied too. */
const parted = (bench: Bench, shift: Shift | null): Bench => {
  const surely = [...bench.surely]
  const possibly = bench.possibly === bench.surely ? surely : [...bench.possibly]
  const slides = { ...bench.slides }
  return { ...bench, options: { rules: false, shift }, surely, possibly, slides, gathered: null }
}

const goneOn = (bench: Bench, from: number): readonly Size[] => {
  const { moves } = bench.operation
  for (let index = from; index < moves.length; index++) carryOut(bench, moves[index]!, index)
  return sizesNow(bench)
}
