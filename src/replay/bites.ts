import type { Edge, Form, Piece } from '../moves/form.ts'
import type { Move } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Bench, see } from './bench.ts'
import { TOLERANCE } from './form/compare.ts'
import { depthAt } from './form/curve.ts'
import { firstBeyond } from './form/insert.ts'
import { stepOf } from './slide.ts'

/** Whether a plunge can clear its chip and whether the tool binds at its sides. Only for a straight-sided edge: a V or a round groove is wider at the top. */

/** A quarter deeper than the edge is wide is still one bite. Common practice, no source. */
const ONE_BITE = 1.25
/** A slot as wide as its tool may be this many widths deep before it must be widened (a trade journal on V-belt grooves, 2023). */
const WIDTHS = 4
/** With this much room beside the edge, as a fraction of its width, the tool does not bind. Common practice, no source. */
const ROOM = 1 / 10

/** Depth of metal that one plunge has taken out since the tool was last clear of the work. */
export const checkBite = (bench: Bench, move: Move, index: number, taken: Length): void => {
  if (move.action !== 'feed-in' || (move.slide ?? 'cross-feed') !== 'cross-feed') return
  const { operation, lathe } = bench
  if (!isStraightSided(operation.edge)) return
  bench.bite += taken
  const most = (operation.peck ?? ONE_BITE * widthOf(operation.edge)) + stepOf(lathe.crossFeed)
  if (bench.bite <= most) return
  see(
    bench,
    'no-peck',
    index,
    bench.bite - most,
    'The tool goes deeper in one plunge than a peck, with its chip in the slot.',
  )
}

/** A tool drawn out until it is clear has brought its chip out. */
export const noteCleared = (bench: Bench, move: Move, index: number): void => {
  const clearance = bench.clearance[index] ?? Number.POSITIVE_INFINITY
  if (move.action === 'back-out' && clearance > TOLERANCE) bench.bite = 0
}

/** Metal on both sides of the edge, no room beside it, and the slot deeper than a slot that can be widened may be. */
export const checkBinding = (bench: Bench, move: Move, index: number, cut: Form): void => {
  if (move.action !== 'feed-in' || (move.slide ?? 'cross-feed') !== 'cross-feed') return
  const { edge, wanted } = bench.operation
  if (!isStraightSided(edge)) return
  const width = widthOf(edge)
  const step = stepOf(bench.lathe.crossFeed)
  const free = wanted.at(-1)!.to - wanted[0]!.from - width
  const room = Math.min(ROOM * width, free / 8)
  if (room < step) return
  const [left, right] = [cut[0]!.from, cut.at(-1)!.to]
  const bottom = Math.max(...cut.map(({ curve, from, to }) => Math.max(depthAt(curve, from), depthAt(curve, to))))
  const beside = [topOf(bench.possibly, left - room, left), topOf(bench.possibly, right, right + room)]
  const deep = bottom - Math.max(...beside)
  if (deep <= WIDTHS * width + 2 * step) return
  see(
    bench,
    'binding',
    index,
    deep - WIDTHS * width,
    'The tool goes deep into a slot of its own width, where it binds.',
  )
}

/** The outermost metal in a stretch; where there is none nothing is above it. */
const topOf = (form: Form, from: Length, to: Length): Length => {
  let top = Number.POSITIVE_INFINITY
  for (let i = firstBeyond(form, from); i < form.length && form[i]!.from < to; i++) {
    const { curve, from: a, to: b } = form[i]!
    top = Math.min(top, depthAt(curve, Math.max(a, from)), depthAt(curve, Math.min(b, to)))
  }
  return top
}

const widthOf = ({ pieces }: Edge): Length => pieces.at(-1)!.to - pieces[0]!.from

const isStraightSided = ({ pieces }: Edge): boolean =>
  pieces.every(({ curve }: Piece) => (curve.kind === 'line' ? curve.d0 === curve.d1 : curve.side === 1))
