import { lostTravel, stepTravel } from '../dials/travel.ts'
import { bounded } from '../moves/bounds.ts'
import type { PlungeCuts } from '../moves/cuts.ts'
import type { Purpose } from '../moves/operation.ts'
import { INCH, type Length } from '../units/length.ts'
import { awayToMeasure } from './away.ts'
import { countFor, findableBehindZero } from './dial.ts'
import { peckIn, peckSteps } from './pecks.ts'
import { add, dialMove, handMove, measureStop, newProgram, type Program } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, setUp, touchSurface } from './set-up.ts'
import { passesTo, stopsWithin } from './stops.ts'

/**
 * The carriage moved by eye, for work to scribed lines: rough between them, in as many places as the width needs; then
 * in to depth there, and across until the cut meets the tailstock line, then the headstock line. The carriage has no
 * reading; the compound stays at 0.
 */
export function sequenceLines(request: Request, cuts: PlungeCuts): Sequenced {
  const { crossFeed } = request.lathe
  const program = newProgram(request.origin)
  const backOut = backOutCount(request, cuts)
  const depth = (deep: Length): number => countFor(crossFeed, deep, 'lower')
  const places = roughPlaces(request, cuts)
  setUp(program, request)
  touchSurface(program, request)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  handMove(program, 'start')
  if (cuts.roughDepths.length > 0) {
    for (const place of places) {
      clearTo(program, request, place)
      const most = peckSteps(cuts.peck, crossFeed)
      peckIn(program, roughCounts(request, cuts), { contact: 0, most, backOut }, 'rough')
      dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
    }
    measureStop(program, crossFeed, backOut, awayToMeasure(crossFeed), 'expect-rough', false)
  }
  // From the first place it goes the short way to the tailstock line, and then across to the other.
  if (cuts.roughDepths.length === 0 || places.length > 1) clearTo(program, request, places[0]!)
  feedIn(program, depth(cuts.depth), 'finish')
  if (cuts.last > cuts.first) across(program, request, cuts)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'square-shoulder')
  finishOperation(program, request, backOut)
  return { ok: true, moves: program.moves }
}

type Spot = { readonly at: Length; readonly purpose: Purpose }

/** Inside both lines by the error of the eye, evenly spread; one place in the middle if there is no room for more. */
function roughPlaces({ eye }: Request, cuts: PlungeCuts): Spot[] {
  const { first, last, spacing } = cuts
  if (last === first) return [{ at: first, purpose: 'between-lines' }]
  const least = cuts.roughPlaces.reduce((most, place) => Math.min(most, place - first), Number.POSITIVE_INFINITY)
  const margin = Math.max(eye, least)
  if (last - first <= 2 * margin) return [{ at: (first + last) / 2, purpose: 'between-lines' }]
  const gaps = bounded(Math.max(1, Math.ceil((last - first - 2 * margin) / spacing - 1e-9)))
  return Array.from({ length: gaps + 1 }, (_, i) => ({
    at: first + margin + ((last - first - 2 * margin) * i) / gaps,
    purpose: 'between-lines',
  }))
}

function roughCounts({ lathe: { crossFeed } }: Request, cuts: PlungeCuts): number[] {
  const counts = cuts.roughDepths.map((deep) => countFor(crossFeed, deep, 'lower'))
  return stopsWithin(counts, passesTo(cuts, crossFeed, countFor(crossFeed, cuts.depth, 'lower')))
}

function clearTo(program: Program, request: Request, { at, purpose }: Spot): void {
  handMove(program, 'unlock', { slide: 'carriage' })
  byEye(program, request, 'move-carriage', at, purpose)
  handMove(program, 'lock', { slide: 'carriage' })
}

function across(program: Program, request: Request, { first, last }: PlungeCuts): void {
  handMove(program, 'unlock', { slide: 'carriage' })
  byEye(program, request, 'feed-across', first, 'tailstock-line')
  byEye(program, request, 'feed-across', last, 'headstock-line')
  handMove(program, 'lock', { slide: 'carriage' })
}

/**
 * To a millionth of an inch, which inches and millimeters both show exactly: a list of these moves is read back
 * unchanged.
 */
function byEye(
  program: Program,
  { fromEnd }: Request,
  action: 'move-carriage' | 'feed-across',
  at: Length,
  purpose: Purpose,
): void {
  const place = Math.round((fromEnd + at) / MILLIONTH) * MILLIONTH
  add(program, { action, slide: 'carriage', place, purpose, origin: program.origin })
}

const MILLIONTH = INCH / 1_000_000

function feedIn(program: Program, count: number, purpose: Purpose): void {
  if (count > program.at['cross-feed']) dialMove(program, 'feed-in', 'cross-feed', count, purpose)
}

/** Clear of the largest stock under the edge between its zero and both lines, at the full lost motion. */
function backOutCount({ lathe, edge, heightOver, clear }: Request, cuts: PlungeCuts): number {
  const [from, to] = [Math.min(0, cuts.first) + edge.from, Math.max(0, cuts.last) + edge.to]
  const need = heightOver(from, to) + clear + edge.deepest + lostTravel(lathe.crossFeed)
  return findableBehindZero(lathe.crossFeed, Math.max(need, stepTravel(lathe.crossFeed)))
}
