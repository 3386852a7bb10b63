import type { Form, Piece } from '../moves/form.ts'
import type { Move, Slide } from '../moves/operation.ts'
import type { Interval } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import { type Bench, type Gathered, ruled, standing } from './bench.ts'
import { checkBinding, checkBite, noteCleared } from './bites.ts'
import { excess, TOLERANCE } from './form/compare.ts'
import { cutInto, gather } from './form/insert.ts'
import { type Place, swept } from './form/sweep.ts'
import { checkShank } from './obstacles.ts'
import { checkClear, checkContact, checkCut, checkTouch, noteBackOut } from './rules.ts'
import { isKnown, isOpen, placeOf, type SlideState } from './slide.ts'
import { takenAtOnce } from './taken.ts'
import { checkSweep, checkWallPlunge } from './walls.ts'
import { type Reach, standingReach, type Ways, waysOf } from './ways.ts'

/** One turn of one dial with the tool at a known place. Cuts what is surely and what is possibly cut, and looks for faults. */
export const pass = (bench: Bench, move: Move, index: number, slide: Slide, from: SlideState, to: SlideState): void => {
  const { options } = bench
  const ways = waysOf(bench, possibleReach(bench, slide, from, to))
  const deep = reaches(bench, ways)
  if ((deep || bench.gathered !== null) && cutsNow(bench)) cutOn(bench, move, index, slide, from, to, ways, deep)
  bench.touched = NOWHERE
  if (!options.rules) return
  noteBackOut(bench, move, index, slide)
  if (!ruled(bench, index)) return
  checkShank(bench, index, ways)
  checkClear(bench, index, slide, ways)
  noteCleared(bench, move, index)
}

const NOWHERE: Form = []

/**
 * Where faults are wanted, a cut with the spindle stopped is a fault. In the replays of the budget a touch that is a little too hard is no cut. Nor is
 * the overlap of the edge before the first cut, where the zero comes from a measured bottom.
 */
export const cutsNow = ({ operation, options, turning, cut }: Bench): boolean =>
  turning || (options.rules && (cut || operation.zeroMeasured !== true))

/** Does the tip reach the outermost surface at all? Most moves are clear of the work. */
const reaches = ({ tip, top }: Bench, ways: Ways): boolean =>
  ways.some(([a, b]) => a.d + tip >= top - TOLERANCE || b.d + tip >= top - TOLERANCE)

const cutOn = (
  bench: Bench,
  move: Move,
  index: number,
  slide: Slide,
  from: SlideState,
  to: SlideState,
  ways: Ways,
  deep: boolean,
): void => {
  const { pieces } = bench.operation.edge
  const sureWays = sureReach(bench, slide, from, to)
  const sure = sureWays === null ? null : waysOf(bench, sureWays)
  if (slide === 'cross-feed' && cutBefore(bench, ways, sure)) return
  bench.lastCut = { possible: ways, sure }
  const cut = swept(pieces, ways, index)
  if (ruled(bench, index)) {
    if (slide !== 'cross-feed' && move.action !== 'feed-across' && move.action !== 'feed-in') {
      const left = waysOf(bench, possibleReach(bench, slide, from, to, LEAVING))
      checkContact(bench, index, swept(pieces, left, index))
    }
    checkSweep(bench, move, index, placeOf(to)[0] > placeOf(from)[0], cut)
    if (slide === 'cross-feed' && move.action === 'feed-in' && bench.options.after === undefined)
      bench.met[index] = Math.max(0, excess(cut, bench.surely)?.by ?? 0)
    if (meetsMetal(cut, bench)) {
      checkWallPlunge(bench, move, index, cut)
      checkCut(bench, index, slide, cut)
      bench.cut = true
      if (bench.options.after === undefined) {
        const taken = takenAtOnce(cut, bench.possibly, bench.operation.edge)
        bench.taken[index] = taken
        checkBite(bench, move, index, taken)
        checkBinding(bench, move, index, cut)
      }
    }
  } else if (bench.options.rules && !bench.cut) bench.cut = meetsMetal(cut, bench)
  removeMetal(bench, cut, ways, sure, index, deep)
}

/** Backing straight out of a cut, the edge passes only through what it has just cut. */
const cutBefore = ({ lastCut }: Bench, possible: Ways, sure: Ways | null): boolean =>
  lastCut !== null &&
  sameWays(lastCut.possible, possible) &&
  (sure === null ? lastCut.sure === null : lastCut.sure !== null && sameWays(lastCut.sure, sure))

const meetsMetal = (cut: Form, { possibly }: Bench): boolean => (excess(cut, possibly)?.by ?? 0) > TOLERANCE

/** Cuts both forms. They become two at the first cut that depends on lost motion. `deep`: the edge reaches the part. */
const removeMetal = (
  bench: Bench,
  cut: Form,
  possible: Ways,
  sure: Ways | null,
  index: number,
  deep: boolean,
): void => {
  const closed = sure !== null && sameWays(possible, sure)
  const surely = (): Form => (closed ? cut : swept(bench.operation.edge.pieces, sure!, index))
  const { gathered } = bench
  if (gathered !== null) takeOut(gathered, cut, sure === null ? null : surely, closed, gather)
  if (!deep || bench.onlyGathers) return
  bench.sizes = null
  takeOut(bench, cut, sure === null ? null : surely, closed, cutInto)
}

const takeOut = (
  of: Gathered,
  cut: Form,
  sure: (() => Form) | null,
  closed: boolean,
  into: (form: Piece[], cut: Form) => void,
): void => {
  if (!closed && of.surely === of.possibly) of.possibly = [...of.surely]
  into(of.possibly, cut)
  if (of.surely === of.possibly || sure === null) return
  into(of.surely, sure())
}

const sameWays = (a: Ways, b: Ways): boolean =>
  a.length === b.length && a.every(([p, q], i) => samePlace(p, b[i]![0]) && samePlace(q, b[i]![1]))

const samePlace = (a: Place, b: Place): boolean => a.z === b.z && a.d === b.d

/** When both zeros are set the edge touches the work. The little that it overlaps then (the tip of a corner tool) counts as cut. */
export const touchDown = (bench: Bench, index: number): void => {
  const { operation, slides } = bench
  const ways = waysOf(bench, standingReach(bench, 1))
  bench.touched = swept(operation.edge.pieces, ways, index)
  checkTouch(bench, index)
  const open = (['carriage', 'compound'] as const).some((one) => isKnown(slides[one]) && isOpen(slides[one]))
  removeMetal(bench, bench.touched, ways, open ? null : waysOf(bench, standingReach(bench, 0)), index, true)
}

/** A move leaves its place after this much travel: so a face beside the tool is left at once, a floor is not. One micrometer. */
const LEAVING: Length = 1_000_000

const possibleReach = (bench: Bench, slide: Slide, from: SlideState, to: SlideState, after: Length = 0): Reach => {
  const { slides } = bench
  return {
    carriage: slide === 'carriage' ? between(from, to, after) : standing(slides.carriage),
    compound: slide === 'compound' ? between(from, to, after) : standing(slides.compound),
    cross: slide === 'cross-feed' ? Math.max(deepestOf(from), deepestOf(to)) : deepestOf(slides['cross-feed']),
  }
}

const deepestOf = (slide: SlideState): Length => placeOf(slide)[1]

/** Everywhere the slide may be on its way, less the first `after` of it. */
const between = (from: SlideState, to: SlideState, after: Length): Interval => {
  const [a, b] = [placeOf(from), placeOf(to)]
  const low = Math.min(a[0], b[0])
  const high = Math.max(a[1], b[1])
  if (b[0] >= a[0]) return [Math.min(low + after, high), high]
  return [low, Math.max(high - after, low)]
}

/** Where the edge passes for every amount of lost motion; null if nowhere. */
const sureReach = (bench: Bench, slide: Slide, from: SlideState, to: SlideState): Reach | null => {
  const { slides } = bench
  if (!bench.locked && slide !== 'carriage') return null
  const isLoose = (one: 'carriage' | 'compound') => one !== slide && slides[one].zeroed && isOpen(slides[one])
  if (isLoose('carriage') || isLoose('compound')) return null
  const [a, b] = [placeOf(from), placeOf(to)]
  if (slide === 'cross-feed') {
    return { carriage: standing(slides.carriage), compound: standing(slides.compound), cross: Math.max(a[0], b[0]) }
  }
  const way: Interval = b[0] >= a[0] ? [a[1], b[0]] : [b[1], a[0]]
  if (way[0] > way[1]) return null
  const range = (one: Slide): Interval => (one === slide ? way : standing(slides[one]))
  return { carriage: range('carriage'), compound: range('compound'), cross: placeOf(slides['cross-feed'])[0] }
}
