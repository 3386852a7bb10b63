import type { Lathe } from '../lathe/lathe.ts'
import type { Move, Operation, Setup } from '../moves/operation.ts'
import type { Size } from '../moves/trace.ts'
import { type Before, type Bench, type Shift, setUp } from './bench.ts'
import { carryOut, sizesNow } from './run.ts'

/**
 * The sizes of one operation for each of these shifts, made one at a time. Up to the first move that a shift bears on there is nothing to tell its
 * replay from the one with nothing wrong: there it is parted from that one, which goes on.
 */
export const sizesShifted = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  before: Before,
  shifts: readonly Shift[],
): ReadonlyMap<Shift, readonly Size[]> => {
  const { moves } = operation
  const firstUse = new Map(shifts.map((shift) => [shift, moves.findIndex((move) => bearsOn(shift, move))]))
  const found = new Map<Shift, readonly Size[]>()
  const right = setUp(lathe, setup, operation, before, { rules: false, shift: null })
  const goOn = (bench: Bench, from: number): readonly Size[] => {
    for (let index = from; index < moves.length; index++) carryOut(bench, moves[index]!, index)
    return sizesNow(bench)
  }
  moves.forEach((move, index) => {
    for (const [shift, first] of firstUse) if (first === index) found.set(shift, goOn(parted(right, shift), index))
    carryOut(right, move, index)
  })
  const sizes = sizesNow(right)
  for (const [shift, first] of firstUse) if (first < 0) found.set(shift, sizes)
  return found
}

const bearsOn = (shift: Shift, move: Move): boolean => {
  if (move.slide !== undefined && move.slide !== shift.slide) return false
  if (!('count' in shift)) return move.place === shift.place
  return shift.count === 'every' ? typeof move.count === 'number' : move.count === shift.count
}

/** The same lathe in the middle of the same operation, from here on with a shift. Without the rules nothing is noted that would have to be copied. */
const parted = (bench: Bench, shift: Shift): Bench => {
  const surely = [...bench.surely]
  const possibly = bench.possibly === bench.surely ? surely : [...bench.possibly]
  return { ...bench, options: { rules: false, shift }, surely, possibly, slides: { ...bench.slides } }
}
