import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import type { PlungeCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import { awayToMeasure } from './away.ts'
import { startClear, touching } from './begin.ts'
import { alongFor, depthShift } from './compound.ts'
import { countFor, findableBehindZero, pastCount } from './dial.ts'
import { peckIn, peckSteps } from './pecks.ts'
import { dialMove, measureStop, newProgram, toPlace } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, setUp, touchSurface, travelRefusal } from './set-up.ts'
import { compoundOf } from './side.ts'
import { passesTo, stopsWithin } from './stops.ts'

/**
 * The compound swung a little (3° to 10°, at 5° 44' a mark is a tenth in depth) as a vernier of the cross-feed, for a
 * form with one place. The line is met with the compound at 0. The surface is touched `back` marks before that, and the
 * compound goes forward to 0 before the tool cuts: the depth that this adds is taken off the cross-feed's.
 */
export type Fine = {
  /** Readable steps of the compound before its zero at which the surface is touched, more than 0. */
  readonly back: number
  /** Depth of those steps. */
  readonly deeper: Length
}

/**
 * Marks of both dials that are nearest to the depth; a tie leaves metal, then the fewer marks. Null if the compound is
 * no vernier, or none is needed.
 */
export function fineDepth({ lathe, angle, heightOver, edge }: Request, cuts: PlungeCuts): Fine | null {
  const onePlace = cuts.first === 0 && cuts.last === 0 && cuts.roughPlaces.every((place) => place === 0)
  if (!onePlace || angle < 3 || angle > 10) return null
  const scale = lathe.compound.scale
  const worth = depthShift(stepTravel(scale), angle)
  const most = Math.floor(stepTravel(lathe.crossFeed) / worth)
  const off = (back: number): Length => reached(lathe.crossFeed, cuts.depth, back * worth) - cuts.depth
  let best = 0
  for (let back = 1; back <= most; back++) {
    const gain = Math.abs(off(best)) - Math.abs(off(back))
    if (gain > 1 || (Math.abs(gain) <= 1 && off(back) < off(best) - 1)) best = back
  }
  if (best === 0) return null
  const passed = alongFor(travelAt(scale, pastCount(scale, -best)), angle)
  // A shoulder on the tailstock side is in the way of a tool that starts before its place.
  return heightOver(passed + edge.from, edge.from) > 0 ? null : { back: best, deeper: best * worth }
}

export function sequenceFine(request: Request, cuts: PlungeCuts, fine: Fine): Sequenced {
  const { crossFeed, compound } = request.lathe
  const program = newProgram(request.origin)
  const backOut = backOutCount(request, fine)
  setUp(program, request)
  toPlace(program, compound.scale, -fine.back)
  touchSurface(program, request)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  const side = compoundOf(request)
  const start = () => startClear(program, request, side, backOut, 0)
  const against = touching(request, side, backOut)(0)
  if (against) start()
  toPlace(program, compound.scale, 0)
  if (!against) start()
  const reading = (depth: Length) => countFor(crossFeed, depth - fine.deeper, 'lower')
  const wanted = [...new Set(cuts.roughDepths.map(reading))].filter((count) => count > backOut)
  const surface = -fine.deeper / stepTravel(crossFeed)
  const counts = stopsWithin(wanted, passesTo(cuts, crossFeed, reading(cuts.depth), surface))
  peckIn(program, counts, { contact: surface, most: peckSteps(cuts.peck, crossFeed), backOut }, 'rough')
  if (cuts.roughDepths.length > 0) {
    dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
    measureStop(program, crossFeed, backOut, awayToMeasure(crossFeed), 'expect-rough', false, start)
  }
  dialMove(program, 'feed-in', 'cross-feed', countFor(crossFeed, cuts.depth - fine.deeper, 'lower'), 'finish')
  dialMove(program, 'back-out', 'cross-feed', backOut, 'square-shoulder')
  finishOperation(program, request, backOut)
  return travelRefusal(request, program) ?? { ok: true, moves: program.moves }
}

const reached = (crossFeed: Request['lathe']['crossFeed'], depth: Length, deeper: Length): Length =>
  travelAt(crossFeed, countFor(crossFeed, depth - deeper, 'lower')) + deeper

/**
 * Clear at the full lost motion at the place itself, where the same reading is deeper than where the surface was
 * touched.
 */
function backOutCount({ lathe, angle, edge, heightOver, clear }: Request, { back, deeper }: Fine): number {
  const { crossFeed, compound } = lathe
  const from = alongFor(travelAt(compound.scale, pastCount(compound.scale, -back)), angle) - lostTravel(compound.scale)
  const need = heightOver(from + edge.from, edge.to) + clear + deeper + edge.deepest + lostTravel(crossFeed)
  return findableBehindZero(crossFeed, Math.max(need, stepTravel(crossFeed)))
}
