import type { Form, Piece } from '../moves/form.ts'
import type { Move, Slide } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Bench, marksBox, see } from './bench.ts'
import { flatAt } from './cavity.ts'
import { differ, excess, overlap, TOLERANCE, touches } from './form/compare.ts'
import { depthAt } from './form/curve.ts'
import { cutInto } from './form/insert.ts'
import { kept } from './form/kept.ts'
import { swept } from './form/sweep.ts'
import { leastForms } from './least.ts'
import { ridgesAllowed } from './marks-ridge.ts'
import { ridgesOf } from './ridge.ts'
import { isOpen, travel } from './slide.ts'
import { checkLedge } from './walls.ts'
import { standingReach, type Ways, waysOf } from './ways.ts'

/** What must never happen in a replay: one rule a function. Each looks at the bench and reports what it finds. */

/** Rounding error allowed, as a part of a readable step. */
const BETWEEN = 1e-9

export const checkReading = (bench: Bench, slide: Slide, index: number, count: number): void => {
  if (!(Math.abs(count - Math.round(count)) <= BETWEEN)) {
    see(bench, 'between-marks', index, null, `The reading of the ${slide} lies between two marks.`)
  }
  if (slide === 'cross-feed') return
  const { compound, carriage } = bench.lathe
  const scale = slide === 'compound' ? compound.scale : carriage
  if (scale === null) return
  const reading = count * (scale.kind === 'dial' ? scale.graduation * scale.readTo : scale.resolution)
  const [lowest, highest] = bench.asked[slide]
  if (reading >= lowest && reading <= highest) return
  const used: [number, number] = [Math.min(lowest, reading), Math.max(highest, reading)]
  bench.asked[slide] = used
  const range = scale.kind === 'readout' ? (scale.range ?? null) : null
  const travel = slide === 'compound' ? compound.travel : range
  const over = travel === null ? 0 : used[1] - used[0] - travel
  if (over <= 0) return
  const say = slide === 'compound' ? 'The compound is asked for more than its travel.' : BEYOND_INDICATOR
  see(bench, 'beyond-travel', index, over, say)
}

const BEYOND_INDICATOR = 'The indicator on the carriage is asked for more than its range.'

/** Counted in by whole turns with the spindle running, one turn too many buries the tool; a stop that was set there before holds it. */
export const checkCountedIn = (bench: Bench, move: Move, index: number, from: Length, to: Length): void => {
  const { crossFeed, crossFeedStop } = bench.lathe
  if (crossFeed.kind === 'readout' || move.action === 'feed-in' || move.action === 'touch-off') return
  if (!bench.turning) {
    if (to > from) bench.stopSetAt = to
    return
  }
  if (to - from <= travel(crossFeed, crossFeed.perTurn) || (crossFeedStop === true && bench.stopSetAt === to)) return
  see(bench, 'counted-in', index, null, 'The cross-feed is counted in by whole turns with the spindle running.')
}

/** A locked carriage is not turned. */
export const checkLock = (bench: Bench, index: number): void => {
  if (bench.locked) see(bench, 'carriage-lock', index, null, 'The carriage is moved while it is locked.')
}

export const checkZero = (bench: Bench, slide: Slide, index: number): void => {
  const state = bench.slides[slide]
  if (isOpen(state)) {
    const open = state.at[1] - state.at[0]
    see(bench, 'open-zero', index, open, `The ${slide} is set to zero before its backlash has been taken up.`)
  }
  if (state.seen && state.lost > 0)
    see(bench, 'open-zero', index, null, `The ${slide} was moved by eye: its backlash has not been taken up.`)
  if (bench.cut) see(bench, 'open-zero', index, null, `The zero of the ${slide} is moved after metal has been cut.`)
  if (slide === 'cross-feed') {
    if (state.brought === null) see(bench, 'open-zero', index, null, 'The cross-feed is set to zero without a touch.')
    return
  }
  if (!bench.locked) see(bench, 'open-zero', index, null, `The ${slide} is set to zero with the carriage not locked.`)
  if (!bench.found)
    see(bench, 'open-zero', index, null, `The ${slide} is set to zero before the tool was brought to its place.`)
}

/** A tip that touches overlaps the work by a little of its edge. If more of it is inside, the tool cannot have been there when the dial was set to zero. */
const TIP = 1 / 4

export const checkTouch = (bench: Bench, index: number): void => {
  const { pieces } = bench.operation.edge
  const inside = overlap(bench.touched, bench.surely)
  if (inside <= TIP * (pieces.at(-1)!.to - pieces[0]!.from)) return
  see(
    bench,
    'open-zero',
    index,
    inside,
    'Where the dials are set to zero the tool would be in the work, not touching it.',
  )
}

export const checkMeasure = (bench: Bench, index: number): void => {
  if (bench.turning) see(bench, 'spindle-standing', index, null, 'The work is measured with the spindle running.')
}

/** Metal is cut only with the spindle turning, the carriage locked, and inside the finished form. */
export const checkCut = (bench: Bench, index: number, slide: Slide, cut: Form): void => {
  if (!bench.turning) see(bench, 'spindle-standing', index, null, 'The tool cuts with the spindle stopped.')
  if (!bench.locked && slide !== 'carriage') {
    see(
      bench,
      'carriage-lock',
      index,
      null,
      'The tool cuts with the carriage not locked, so the place along the work is open.',
    )
  }
  const beyond = excess(cut, bench.limit)
  if (beyond !== null && beyond.by > TOLERANCE) {
    see(bench, 'outside-form', index, beyond.by, 'The tool can cut outside the finished form.')
  }
}

export const checkContact = (bench: Bench, index: number, passed: Form): void => {
  // The metal that the edge overlapped when it was set to zero is the same for every amount of backlash.
  const metal = bench.touched.length === 0 ? bench.surely : [...bench.surely]
  if (metal !== bench.surely) cutInto(metal, bench.touched)
  if (touches(passed, metal)) {
    see(bench, 'moved-in-contact', index, null, 'The tool is moved along the work while it touches.')
  }
}

/** After a back-out the tool must be clear until it is fed in again. */
export const noteBackOut = (bench: Bench, move: Move, index: number, slide: Slide): void => {
  if (move.action === 'feed-in' || move.action === 'feed-across' || move.action === 'touch-off') bench.backOut = null
  if (move.action === 'back-out' && slide === 'cross-feed') bench.backOut = index
}

/**
 * The part before the operation, without what another tool has opened up between the lines: over that the tool is only clear when it is above the
 * surface beside it.
 */
const unopened = ({ before, operation }: Bench): Form => {
  const { region, surface } = operation
  return closed(before.surely, operation.wanted, [surface, region.from, region.to], () => {
    const level = flatAt(-surface / 2)
    const opened = ({ from, to, curve }: Piece): boolean =>
      to > region.from && from < region.to && depthAt(curve, (from + to) / 2) > level.d0 + TOLERANCE
    if (!before.surely.some(opened)) return before.surely
    return before.surely.flatMap((piece): Piece[] => {
      if (!opened(piece)) return [piece]
      const from = Math.max(piece.from, region.from)
      const to = Math.min(piece.to, region.to)
      return [
        { ...piece, to: from },
        { from, to, curve: level, step: -1 },
        { ...piece, from: to },
      ].filter((part) => part.to > part.from)
    })
  })
}
const closed = kept<Form>()

/** After a back-out the edge is above the surface: at the place it left, and wherever it goes until it is fed in again. */
export const checkClear = (bench: Bench, index: number, slide: Slide, ways: Ways): void => {
  if (bench.backOut === null) return
  // On its way out the tool is still in its groove: what counts is where it stops.
  const now = slide === 'cross-feed' ? waysOf(bench, standingReach(bench, 1)) : ways
  // For a part of an operation the amount of clearance is not needed: it is enough that the tip is above all of the work.
  if (bench.options.after !== undefined && isAbove(bench, now)) return
  const over = excess(swept(bench.operation.edge.pieces, now, index), unopened(bench))
  if (over === null) return
  bench.clearance[index] = -over.by
  if (-over.by <= TOLERANCE) {
    see(
      bench,
      'not-clear',
      index,
      over.by,
      'With the whole backlash the tool is not clear of the surface after backing out.',
    )
  }
}

const isAbove = ({ tip, top }: Bench, ways: Ways): boolean =>
  ways.every(([a, b]) => Math.max(a.d, b.d) + tip < top - TOLERANCE)

export const checkEnd = (bench: Bench): void => {
  if (!bench.options.rules) return
  const { before, operation, surely, possibly } = bench
  const open = differ(surely, possibly)
  if (open !== null && differ(before.surely, before.possibly) === null) {
    see(bench, 'open-form', -1, open.by, 'What is cut depends on the backlash.')
  }
  checkLedge(bench)
  const ridges = checkRidges(bench)
  const least = leastForms(operation, before.surely, marksBox(bench.lathe, operation), ridges)
  const left = Math.max(...least.map((form) => excess(form, surely)?.by ?? 0))
  if (left > TOLERANCE) see(bench, 'metal-left', -1, left, 'Metal is left inside the finished form.')
}

/** A form cut step by step: a ridge is no taller than the job or the shop allows, or than the marks of these dials must leave. */
const checkRidges = (bench: Bench): readonly Length[] => {
  const { operation, surely } = bench
  if (operation.cusp === undefined) return []
  const ridges = ridgesOf(operation.wanted, surely)
  const allowed = ridgesAllowed(bench, ridges)
  const over = Math.max(...ridges.map((ridge, i) => ridge - allowed[i]!))
  if (over > TOLERANCE)
    see(bench, 'ridge', -1, over, 'Between neighboring places more metal is left than the cusp allows.')
  return allowed
}
