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
 * An operation up to one of its moves, with everything that the edge has gone through by then. A zero that was off in depth or along the work moves all
 * of that as one: then the moves up to there need not be made again.
 */
export type Halfway = { readonly bench: Bench; readonly gathered: Gathered; readonly index: number }

/** Makes the moves before `index`. Null where not all of them would move as one. */
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
    // Behind the last touch and the first cut the part tells nothing more: it is cut anew when it goes on.
    bench.onlyGathers = i > found && bench.cut
    carryOut(bench, operation.moves[i]!, i)
  }
  return { bench, gathered, index }
}

/** Where the eye brings the tool to a line, or the tool is fed to a face, its place does not follow the zero. */
export const movesAsOne = ({ moves }: Operation, index: number): boolean =>
  moves.every(
    ({ action, slide, place }, i) =>
      place === undefined && (i >= index || action !== 'touch-off' || (slide ?? 'cross-feed') === 'cross-feed'),
  )

/** The rest of the moves, from a zero that is off by so much; `operation` may have other moves from there on, and another wanted form. pm. */
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
 * All the moves on a part that is otherwise than it was, with the same edge and angle: only where the zeros are found is made again, and what the edge
 * went through moves with them.
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

/** Behind the last of these nothing changes where the zeros are. */
const FINDS: ReadonlySet<Move['action']> = new Set<Move['action']>(['align', 'touch-off', 'zero'])

const cutOut = (before: Form, cut: Form): Piece[] => {
  const part = [...before]
  cutInto(part, cut)
  return part
}
