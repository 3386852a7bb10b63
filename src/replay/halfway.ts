import type { Lathe } from '../lathe/lathe.ts'
import type { Form, Piece } from '../moves/form.ts'
import type { Move, Operation, Setup } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import {
  type Before,
  type Bench,
  type Gathered,
  limitOf,
  marksBox,
  nothingSeen,
  type RunOptions,
  setUp,
} from './bench.ts'
import { excess, TOLERANCE } from './form/compare.ts'
import { moved } from './form/curve.ts'
import { cutInto } from './form/insert.ts'
import { carryOut, type Ran, ran } from './run.ts'

/**
 * An operation up to one of its moves, with everything that the edge has passed through until then. An error of a zero moves all of that together, so
 * these moves need not be replayed again.
 */
export type Halfway = { readonly bench: Bench; readonly gathered: Passed; readonly index: number }

/** What the edge passes through, in metal or in air: surely and possibly. */
export type Passed = { readonly surely: Form; readonly possibly: Form }

/** Replays the moves before `index`. Null if an error of a zero would not move all of them together. */
export const halfway = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  before: Before,
  index: number,
  options: RunOptions,
): Halfway | null => {
  if (!movesAsOne(operation, index)) return null
  const nothing: Gathered['surely'] = []
  const gathered = { surely: nothing, possibly: nothing }
  const bench: Bench = { ...setUp(lathe, setup, operation, before, { ...options, after: index }), gathered }
  const found = operation.moves.findLastIndex(
    ({ action }, i) => i < index && (action === 'touch-off' || action === 'zero'),
  )
  for (let i = 0; i < index; i++) {
    // After the last touch and the first cut nothing depends on the part: `goOn` cuts it again.
    bench.onlyGathers = i > found && bench.cut
    carryOut(bench, operation.moves[i]!, i)
  }
  return { bench, gathered, index }
}

/** A place that is found by eye at a line, or by touch at a face, does not follow the zero. */
export const movesAsOne = ({ moves }: Operation, index: number): boolean =>
  moves.every(
    ({ action, slide, place }, i) =>
      place === undefined && (i >= index || action !== 'touch-off' || (slide ?? 'cross-feed') === 'cross-feed'),
  )

/** Replays the rest of the moves with the zero off by `off`, pm. `operation` may have other moves from there on, and another wanted form. */
export const goOn = (
  { bench: until, gathered, index }: Halfway,
  operation: Operation,
  before: Before,
  off: { readonly along: Length; readonly deep: Length },
): Ran => {
  const { options, lathe } = until
  const cut = movedBy(gathered.surely, off)
  const maybe = gathered.possibly === gathered.surely ? cut : movedBy(gathered.possibly, off)
  const surely = cutOut(before.surely, cut)
  const possibly = maybe === cut && before.possibly === before.surely ? surely : cutOut(before.possibly, maybe)
  const bench: Bench = {
    ...until,
    operation,
    before,
    limit: options.rules ? limitOf(before.allowed, marksBox(lathe, operation)) : until.limit,
    surely,
    possibly,
    slides: { ...until.slides },
    fromEnd: until.fromEnd === null ? null : until.fromEnd + off.along,
    depth: until.depth === null ? null : until.depth + off.deep,
    cut: (excess(maybe, before.possibly)?.by ?? 0) > TOLERANCE,
    asked: { compound: [...until.asked.compound], carriage: [...until.asked.carriage] },
    ...nothingSeen(),
  }
  for (let i = index; i < operation.moves.length; i++) carryOut(bench, operation.moves[i]!, i)
  return ran(bench)
}

const movedBy = (cut: Form, { along, deep }: { readonly along: Length; readonly deep: Length }): Form =>
  along === 0 && deep === 0
    ? cut
    : cut.map(({ from, to, curve, step }) => ({
        from: from + along,
        to: to + along,
        curve: moved(curve, along, deep),
        step,
      }))

/**
 * All moves on another part, with the same edge and angle. Only finding the zeros is replayed again; everything the edge has passed through moves
 * with them.
 */
export const madeOn = (half: Halfway, operation: Operation, before: Before): Ran => {
  const { lathe, setup, options, fromEnd, depth } = half.bench
  const bench = setUp(lathe, setup, operation, before, options)
  const last = operation.moves.findLastIndex(({ action }) => FINDS.has(action))
  for (let i = 0; i <= last; i++) carryOut(bench, operation.moves[i]!, i)
  const along = (bench.fromEnd ?? 0) - (fromEnd ?? 0)
  const deep = (bench.depth ?? 0) - (depth ?? 0)
  return goOn(half, operation, before, { along, deep })
}

/** After the last of these actions the zeros stay where they are. */
export const FINDS: ReadonlySet<Move['action']> = new Set<Move['action']>(['align', 'touch-off', 'zero'])

const cutOut = (before: Form, cut: Form): Piece[] => {
  const part = [...before]
  cutInto(part, cut)
  return part
}
