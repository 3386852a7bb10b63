import type { Lathe } from '../lathe/lathe.ts'
import type { Move, Operation, Setup } from '../moves/operation.ts'
import type { Interval, OperationTrace, Size } from '../moves/trace.ts'
import { type Before, type Bench, type Gathered, type Shift, setUp } from './bench.ts'
import { cutInto, envelopeOf } from './form/insert.ts'
import { FINDS, type Halfway, movesAsOne, type Passed } from './halfway.ts'
import { carryOut, ran, sizesNow } from './run.ts'
import type { SlideState } from './slide.ts'

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
  const gathered: Gathered = nothingGathered()
  const bench: Bench = { ...setUp(lathe, setup, operation, before, { rules: false, shift: null }), gathered }
  const until = new Map<number, Bench>()
  const used = new Set<string>()
  const states: State[] = []
  const cuts = moves.map((move, index) => {
    const reading = readingOf(move)
    if (reading !== null && !used.has(reading)) until.set(index, parted(bench, null))
    if (reading !== null) used.add(reading)
    Object.assign(gathered, nothingGathered())
    carryOut(bench, move, index)
    states.push({ fromEnd: bench.fromEnd, depth: bench.depth, slides: { ...bench.slides } })
    return { ...gathered }
  })
  const { trace } = ran(bench)
  let rest: readonly Passed[] | undefined
  const shifted = (shift: Shift): readonly Size[] => {
    const first = moves.findIndex((move) => bearsOn(shift, move))
    if (first < 0) return trace.sizes
    const last = moves.findLastIndex((move) => bearsOn(shift, move) || FINDS.has(move.action))
    rest ??= fromEachOn(cuts)
    return goneOn(parted(until.get(first)!, shift), first, { last, states, rest })
  }
  const whole = movesAsOne(operation, moves.length) ? { bench, gathered: together(cuts), index: moves.length } : null
  return { trace, whole, shifted }
}

const nothingGathered = (): Gathered => {
  const nothing: Gathered['surely'] = []
  return { surely: nothing, possibly: nothing }
}

/** Both are the same form as long as no cut depends on lost motion. */
const together = (cuts: readonly Passed[]): Passed => {
  const possibly = envelopeOf(cuts.map((cut) => cut.possibly))
  const same = cuts.every((cut) => cut.surely === cut.possibly)
  return { possibly, surely: same ? possibly : envelopeOf(cuts.map((cut) => cut.surely)) }
}

/** For each move, what it and all moves after it pass through. */
const fromEachOn = (cuts: readonly Passed[]): readonly Passed[] => {
  const rest: Passed[] = [together([])]
  for (const cut of cuts.toReversed()) {
    const next = rest.at(-1)!
    rest.push(cut.possibly.length === 0 ? next : together([cut, next]))
  }
  return rest.toReversed()
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

/** Where the tool is after a move. */
type State = Pick<Bench, 'fromEnd' | 'depth' | 'slides'>
/** `last`: the last move that is wrong, or that finds a zero. */
type Planned = { readonly last: number; readonly states: readonly State[]; readonly rest: readonly Passed[] }

/** Once the tool is where it is without the error, and no move is wrong any more, the rest passes where it passes without it. */
const goneOn = (bench: Bench, from: number, { last, states, rest }: Planned): readonly Size[] => {
  const { moves } = bench.operation
  for (let index = from; index < moves.length; index++) {
    carryOut(bench, moves[index]!, index)
    if (index >= last && sameState(bench, states[index]!)) {
      cutRest(bench, rest[index + 1]!)
      break
    }
  }
  return sizesNow(bench)
}

const cutRest = (bench: Bench, { surely, possibly }: Passed): void => {
  if (possibly.length === 0) return
  const parts = bench.surely !== bench.possibly || surely !== possibly
  if (parts && bench.surely === bench.possibly) bench.possibly = [...bench.surely]
  cutInto(bench.possibly, possibly)
  if (parts) cutInto(bench.surely, surely)
  bench.sizes = null
}

const sameState = (one: State, other: State): boolean =>
  one.fromEnd === other.fromEnd &&
  one.depth === other.depth &&
  sameSlide(one.slides.compound, other.slides.compound) &&
  sameSlide(one.slides['cross-feed'], other.slides['cross-feed']) &&
  sameSlide(one.slides.carriage, other.slides.carriage)

const sameSlide = (one: SlideState, other: SlideState): boolean =>
  one === other ||
  (one.dial === other.dial &&
    sameInterval(one.at, other.at) &&
    sameInterval(one.offset, other.offset) &&
    (one.brought === other.brought ||
      (one.brought !== null && other.brought !== null && sameInterval(one.brought, other.brought))) &&
    one.zeroed === other.zeroed &&
    one.seen === other.seen)

const sameInterval = (one: Interval, other: Interval): boolean => one[0] === other[0] && one[1] === other[1]
