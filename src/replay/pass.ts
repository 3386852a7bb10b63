import type { Move, Slide } from '../moves/operation.ts'
import type { Interval } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import { type Bench, standing } from './bench.ts'
import { excess, TOLERANCE } from './form/compare.ts'
import { cutInto } from './form/insert.ts'
import { swept } from './form/sweep.ts'
import { checkClear, checkContact, checkCut, checkShank } from './rules.ts'
import { isOpen, placeOf, type SlideState } from './slide.ts'
import { type Reach, standingReach, waysOf } from './ways.ts'

/** One turn of one dial with the tool at a known place: cuts what it surely and what it possibly cuts, and looks for faults. */
export const pass = (bench: Bench, move: Move, index: number, slide: Slide, from: SlideState, to: SlideState): void => {
  const { operation, options } = bench
  const ways = waysOf(operation, possibleReach(bench, slide, from, to))
  const cut = swept(operation.edge.pieces, ways, index)
  const metal = excess(cut, bench.possibly)
  const removes = metal !== null && metal.by > TOLERANCE
  if (options.rules) {
    if (slide !== 'cross-feed' && move.action !== 'feed-across' && move.action !== 'feed-in') {
      const left = possibleReach(bench, slide, from, to, LEAVING)
      checkContact(bench, index, swept(operation.edge.pieces, waysOf(operation, left), index))
    }
    if (removes) checkCut(bench, index, slide, cut)
  }
  bench.touched = []
  const sure = sureReach(bench, slide, from, to)
  if (removes) bench.cut = true
  cutInto(bench.possibly, cut)
  if (sure !== null) cutInto(bench.surely, swept(operation.edge.pieces, waysOf(operation, sure), index))
  if (!options.rules) return
  checkShank(bench, index, ways)
  checkClear(bench, move, index, slide, ways)
}

/** The moment both zeros are set the edge stands on the work: what little it overlaps then (a corner tool's tip) is gone. */
export const touchDown = (bench: Bench, index: number): void => {
  const { operation, slides } = bench
  bench.touched = swept(operation.edge.pieces, waysOf(operation, standingReach(bench, 1)), index)
  cutInto(bench.possibly, bench.touched)
  const open = isOpen(slides.carriage) && slides.carriage.zeroed
  const sure = open || (isOpen(slides.compound) && slides.compound.zeroed) ? null : standingReach(bench, 0)
  if (sure !== null) cutInto(bench.surely, swept(operation.edge.pieces, waysOf(operation, sure), index))
}

/** Moving off a place begins beyond this: a face the tool stands against is left at once, a floor is not. One micrometer. */
const LEAVING: Length = 1_000_000

const possibleReach = (bench: Bench, slide: Slide, from: SlideState, to: SlideState, after: Length = 0): Reach => {
  const { slides } = bench
  const range = (one: Slide): Interval => (one === slide ? between(from, to, after) : standing(slides[one]))
  const cross = slide === 'cross-feed' ? Math.max(placeOf(from)[1], placeOf(to)[1]) : placeOf(slides['cross-feed'])[1]
  return { carriage: range('carriage'), compound: range('compound'), cross }
}

/** Everywhere the slide may be on its way, less the first `after` of it. */
const between = (from: SlideState, to: SlideState, after: Length): Interval => {
  const [a, b] = [placeOf(from), placeOf(to)]
  const low = Math.min(a[0], b[0])
  const high = Math.max(a[1], b[1])
  if (b[0] >= a[0]) return [Math.min(low + after, high), high]
  return [low, Math.max(high - after, low)]
}

/** Where the edge passes whatever the lost motion is: null where nothing is sure. */
const sureReach = (bench: Bench, slide: Slide, from: SlideState, to: SlideState): Reach | null => {
  const { slides } = bench
  if (!bench.locked && slide !== 'carriage') return null
  const others = (['carriage', 'compound'] as const).filter((one) => one !== slide && slides[one].zeroed)
  if (others.some((one) => isOpen(slides[one]))) return null
  const [a, b] = [placeOf(from), placeOf(to)]
  if (slide === 'cross-feed') {
    return { carriage: standing(slides.carriage), compound: standing(slides.compound), cross: Math.max(a[0], b[0]) }
  }
  const way: Interval = b[0] >= a[0] ? [a[1], b[0]] : [b[1], a[0]]
  if (way[0] > way[1]) return null
  const range = (one: Slide): Interval => (one === slide ? way : standing(slides[one]))
  return { carriage: range('carriage'), compound: range('compound'), cross: placeOf(slides['cross-feed'])[0] }
}
