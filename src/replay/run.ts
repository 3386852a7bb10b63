import type { Lathe } from '../lathe/lathe.ts'
import type { Form } from '../moves/form.ts'
import type { Move, Operation, Setup, Slide } from '../moves/operation.ts'
import type { Interval, OperationTrace, Size } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import {
  type Before,
  type Bench,
  placeKnown,
  type RunOptions,
  radians,
  ruled,
  type Seen,
  type Shift,
  see,
  setUp,
  standing,
} from './bench.ts'
import { align, foundOrSupposed, touchOff, zeroOf } from './found.ts'
import { takenOf } from './measure.ts'
import { checkObstacles } from './obstacles.ts'
import { cutsNow, pass, touchDown } from './pass.ts'
import { ridgesOf } from './ridge.ts'
import { checkCountedIn, checkEnd, checkLock, checkMeasure, checkReading, checkZero } from './rules.ts'
import { checkBrought, checkTakeUp, checkTouchAgain, ontoLine } from './set-up-rules.ts'
import { broughtHere, isKnown, placeOf, seenAt, turned, zeroed } from './slide.ts'

/** One operation on a part: what the slides did, what was cut, and the faults. */
export const runOperation = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  before: Before,
  options: RunOptions,
): Ran => {
  const bench = setUp(lathe, setup, operation, before, options)
  const slides: OperationTrace['slides'][number][] = []
  operation.moves.forEach((move, index) => {
    carryOut(bench, move, index)
    if (options.rules) slides.push(whereabouts(bench))
  })
  return ran(bench, slides)
}

export type Ran = { readonly trace: OperationTrace; readonly faults: readonly Seen[] }

/** The result of all the moves. */
export const ran = (bench: Bench, slides: OperationTrace['slides'] = []): Ran => {
  checkEnd(bench)
  const { operation, surely, possibly, at, clearance, taken, met, faults } = bench
  const ridges = operation.cusp === undefined ? {} : { ridges: ridgesOf(operation.wanted, surely) }
  const zero = zeroOf(bench)
  const sizes = sizesNow(bench)
  return { trace: { zero, slides, surely, possibly, sizes, at, clearance, taken, met, ...ridges }, faults }
}

/** One move. */
export const carryOut = (bench: Bench, move: Move, index: number): void => {
  switch (move.action) {
    case 'start':
    case 'stop':
      bench.turning = move.action === 'start'
      return
    case 'lock':
    case 'unlock':
      bench.locked = move.action === 'lock'
      return
    case 'align':
      checkBrought(bench, move, index)
      align(bench, index)
      checkObstacles(bench, index, bench.fromEnd!, bench.fromEnd!)
      return
    case 'touch-off':
      checkTouchAgain(bench, move.slide ?? 'cross-feed', index)
      touchOff(bench, move.slide ?? 'cross-feed', index)
      return
    case 'fit-tool':
    case 'swing':
      checkBrought(bench, move, index)
      return
    case 'measure':
      checkMeasure(bench, index)
      if (ruled(bench, index)) noteSizes(bench, index)
      return
    case 'layout':
    case 'set-speed':
      return
    case 'deburr':
      if (move.purpose === 'chamfer' && !placeKnown(bench))
        see(bench, 'set-up', index, null, 'The corner is chamfered where the tool must still be touched off.')
      return
    case 'zero':
      setZero(bench, move.slide ?? 'cross-feed', index)
      return
    default:
      turn(bench, move, index)
  }
}

const setZero = (bench: Bench, slide: Slide, index: number): void => {
  checkZero(bench, slide, index)
  foundOrSupposed(bench, slide)
  const first = !placeKnown(bench)
  bench.slides[slide] = zeroed(bench.slides[slide])
  if (first && placeKnown(bench) && cutsNow(bench)) touchDown(bench, index)
}

/** Turns a dial to a reading, or forward by so many steps before it has one. */
const turn = (bench: Bench, move: Move, index: number): void => {
  const slide = move.slide ?? usualSlide(move)
  if (slide === 'carriage') checkLock(bench, index)
  if (move.action === 'take-up') checkTakeUp(bench, move, slide, index)
  if (slide === 'carriage' && move.place !== undefined) {
    bring(bench, move, move.place, index)
    return
  }
  const target = targetOf(bench, move, slide, index)
  if (target === null) return
  const from = bench.slides[slide]
  if (slide === 'cross-feed') checkCountedIn(bench, move, index, from.dial, target)
  const onto = slide === 'carriage' && ontoLine(bench, move)
  const to = onto ? broughtHere(turned(from, target)) : turned(from, target)
  bench.slides[slide] = to
  if (placeKnown(bench)) pass(bench, move, index, slide, from, to)
}

/** Moves the carriage by eye until the reference point of the tool is at a place, from the free end. */
const bring = (bench: Bench, move: Move, place: Length, index: number): void => {
  foundOrSupposed(bench, 'carriage')
  const { operation, slides, options } = bench
  const { shift } = options
  const wrong = shift !== null && 'place' in shift && shift.place === place ? shift.by : 0
  const along = standing(slides.compound)[0] * Math.cos(radians(operation))
  const from = isKnown(slides.carriage) ? slides.carriage : seenAt(slides.carriage, 0)
  const to = seenAt(from, place + wrong - bench.fromEnd! - along)
  bench.slides.carriage = to
  if (placeKnown(bench)) pass(bench, move, index, 'carriage', from, to)
}

const usualSlide = ({ action }: Move): Slide => {
  if (action === 'move-carriage') return 'carriage'
  return action === 'feed-in' || action === 'back-out' ? 'cross-feed' : 'compound'
}

const targetOf = (bench: Bench, move: Move, slide: Slide, index: number): Length | null => {
  const { dial, step, zeroed: named } = bench.slides[slide]
  if (move.action === 'take-up' && (move.count === null || move.count === undefined)) {
    const target = dial + (move.takeUp ?? 0) * step
    if (named) checkReading(bench, slide, index, (move.takeUp ?? 0) + dial / step)
    return target
  }
  if (!named) {
    see(bench, 'open-zero', index, null, `The ${slide} is turned to a reading before its dial has been set to zero.`)
    return null
  }
  if (typeof move.count !== 'number' || !Number.isFinite(move.count) || step === 0) {
    see(bench, 'between-marks', index, null, `No reading of the ${slide} is given that its dial can show.`)
    return null
  }
  checkReading(bench, slide, index, move.count)
  const wrong = bench.options.shift
  return move.count * step + (wrong !== null && misreads(wrong, slide, move.count, index) ? wrong.by : 0)
}

const misreads = (wrong: Shift, slide: Slide, count: number, index: number): boolean =>
  'count' in wrong &&
  wrong.slide === slide &&
  index >= (wrong.from ?? 0) &&
  (wrong.count === 'every' || wrong.count === count)

const whereabouts = ({ slides }: Bench): Readonly<Record<Slide, Interval>> => ({
  'cross-feed': placeOf(slides['cross-feed']),
  compound: placeOf(slides.compound),
  carriage: placeOf(slides.carriage),
})

/** Replays of a part of an operation seldom need the sizes at its stops. So the part is kept as it was then, and measured only if they are read. */
const noteSizes = (bench: Bench, index: number): void => {
  if (bench.options.after === undefined) {
    bench.at[index] = sizesNow(bench)
    return
  }
  const { operation, before } = bench
  const surely = [...bench.surely]
  const possibly = bench.possibly === bench.surely ? surely : [...bench.possibly]
  let taken: readonly Size[] | undefined
  Object.defineProperty(bench.at, index, {
    enumerable: true,
    get: () => {
      taken ??= sizesOf({ operation, before, surely, possibly })
      return taken
    },
  })
}

/** The sizes; the same as before if nothing has been cut since. */
export const sizesNow = (bench: Bench): readonly Size[] => {
  bench.sizes ??= sizesOf(bench)
  return bench.sizes
}

const sizesOf = ({
  operation,
  before,
  surely,
  possibly,
}: Pick<Bench, 'operation' | 'before' | 'surely' | 'possibly'>): readonly Size[] => {
  const taken = (form: Form) => takenOf(form, before.surely, operation, operation.dimensions)
  const sure = taken(surely)
  const maybe = possibly === surely ? sure : taken(possibly)
  return operation.dimensions.map(({ id }, index) => ({ id, surely: sure[index]!, possibly: maybe[index]! }))
}
