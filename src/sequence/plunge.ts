import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import { bounded } from '../moves/bounds.ts'
import type { PlungeCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import { awayToMeasure } from './away.ts'
import { besideEdge, startClear } from './begin.ts'
import { alongFor, depthShift } from './compound.ts'
import { countFor, findableBehindZero, pastCount } from './dial.ts'
import { fineDepth, sequenceFine } from './fine.ts'
import { sequenceLines } from './lines.ts'
import { layersOf, peckIn, peckSteps } from './pecks.ts'
import { dialMove, measureStop, newProgram, type Program } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, rangeRefusal, setUpClear, travelRefusal } from './set-up.ts'
import { compoundOf, type Side, sideAcross, sideOf, sideTo } from './side.ts'
import { mostSteps, passesTo, stopsWithin } from './stops.ts'

/**
 * Plunges at one or more places, then a finish: across by a slide that is parallel with the work, by overlapping
 * plunges if the compound is swung.
 */
export function sequencePlunges(request: Request, cuts: PlungeCuts): Sequenced {
  if (request.sideFeed === 'lines' && !isOnePlace(cuts)) return sequenceLines(request, cuts)
  const side = sideOf(request)
  const fine = fineDepth(request, cuts)
  if (fine !== null) return sequenceFine(request, cuts, fine)
  const places = quantisePlaces(side, cuts)
  if (places === null) return compoundAcross()
  const program = newProgram(request.origin)
  const plan: Plan = { request, side, cuts, places, backOut: backOutCount(request, side, cuts, places) }
  setUpClear(program, request, plan.backOut, side.slide === 'carriage' && !isOnePlace(cuts) ? side.scale : null)
  const start = (next: number) =>
    startClear(program, request, isOnePlace(cuts) ? compoundOf(request) : side, plan.backOut, next)
  const firstOfAll = cuts.roughDepths.length > 0 ? places.rough[0]! : places.first
  start(firstOfAll)
  rough(program, plan)
  if (cuts.roughDepths.length > 0)
    measureStop(
      program,
      request.lathe.crossFeed,
      plan.backOut,
      awayToMeasure(request.lathe.crossFeed),
      'expect-rough',
      false,
      () => start(places.first),
    )
  finish(program, plan)
  finishOperation(program, request, plan.backOut)
  return travelRefusal(request, program) ?? rangeRefusal(request, program) ?? { ok: true, moves: program.moves }
}

type Places = {
  readonly rough: readonly number[]
  readonly first: number
  readonly last: number
  readonly finish: readonly number[]
}
type Plan = {
  readonly request: Request
  readonly side: Side
  readonly cuts: PlungeCuts
  readonly places: Places
  readonly backOut: number
}

/** One place, where the tool already is: nothing moves it along. */
const isOnePlace = (cuts: PlungeCuts): boolean =>
  cuts.first === 0 && cuts.last === 0 && cuts.roughPlaces.every((place) => place === 0)

/**
 * Places on the dial that moves along. Near walls leave metal with more travel, far walls with less. Null if the
 * compound is square to the work and would have to move.
 */
function quantisePlaces({ scale, angle }: Side, cuts: PlungeCuts): Places | null {
  const along = Math.cos(angle * (Math.PI / 180))
  const onDial = (place: Length, tie: 'lower' | 'higher') => countFor(scale, place / along, tie)
  if (along < 1e-9) return isOnePlace(cuts) ? { rough: [0], first: 0, last: 0, finish: [0] } : null
  const first = onDial(cuts.first, 'higher')
  const last = Math.max(first, onDial(cuts.last, 'lower'))
  // Nothing is left on a wall that roughing comes to.
  const own = cuts.walls === 'plunged' && last - first >= 2 ? 1 : 0
  const clamp = (count: number) => Math.min(last - own, Math.max(first + own, count))
  const rough = unique(cuts.roughPlaces.map((place) => clamp(onDial(place, 'higher'))))
  return { rough, first, last, finish: overlapping(first, last, cuts.spacing / along / stepTravel(scale)) }
}

const unique = (counts: number[]): number[] => [...new Set(counts)].sort((a, b) => a - b)

/** Whole counts from first to last, no further apart than `most`. */
function overlapping(first: number, last: number, most: number): number[] {
  const gaps =
    first === last ? 0 : bounded(Math.max(1, Math.ceil((last - first) / Math.max(1, Math.floor(most)) - 1e-9)))
  return unique(Array.from({ length: gaps + 1 }, (_, i) => first + Math.round(((last - first) * i) / (gaps || 1))))
}

/**
 * One back-out for the whole operation: clear of the largest stock under the edge at every place that the tool leaves,
 * passes or goes to, at the full lost motion.
 */
function backOutCount(request: Request, side: Side, cuts: PlungeCuts, places: Places): number {
  const { lathe, edge } = request
  const { scale, angle } = side
  const lowest = Math.min(0, pastCount(scale, Math.min(0, places.first)))
  const counts = [lowest, 0, places.last, ...places.rough]
  const travels = counts.map((count) => travelAt(scale, count))
  const deeper = Math.max(...travels.map((travel) => depthShift(travel, angle)))
  const from = Math.min(...travels.map((travel) => alongFor(travel, angle))) + edge.from - lostTravel(scale)
  // A tool as wide as its groove is moved off a shoulder by the compound, whatever moves the others.
  const beside = besideEdge(request, isOnePlace(cuts) ? compoundOf(request) : side)
  const to = Math.max(...travels.map((travel) => alongFor(travel, angle)), cuts.last) + edge.to + beside
  const need = request.heightOver(from, to) + request.clear + deeper + edge.deepest + lostTravel(lathe.crossFeed)
  return findableBehindZero(lathe.crossFeed, Math.max(need, stepTravel(lathe.crossFeed)))
}

/** The cross-feed's reading for a depth at a place: the rounded place first, then the depth for it. */
function crossCount({ request, side }: Plan, depth: Length, place: number): number {
  const shift = depthShift(travelAt(side.scale, place), side.angle)
  return countFor(request.lathe.crossFeed, depth - shift, 'lower')
}

function rough(program: Program, plan: Plan): void {
  const { side, cuts, places, backOut } = plan
  if (cuts.roughDepths.length === 0) return
  const { crossFeed } = plan.request.lathe
  const steps = (length: Length | null) => (length === null ? null : length / stepTravel(crossFeed))
  const most = peckSteps(cuts.peck, crossFeed)
  const runs = places.rough.map((place) =>
    layersOf(roughCounts(plan, place), surfaceCount(plan, place), steps(cuts.layer)),
  )
  for (let layer = 0; layer < Math.max(...runs.map(({ length }) => length)); layer++)
    places.rough.forEach((place, i) => {
      const counts = runs[i]![layer] ?? []
      if (counts.length === 0) return
      const contact = runs[i]![layer - 1]?.at(-1) ?? surfaceCount(plan, place)
      sideTo(program, side, place)
      peckIn(program, counts, { contact, most, backOut }, 'rough')
      dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
    })
}

/** The cross-feed's reading at which the edge meets the surface at a place; not always a whole number. */
const surfaceCount = ({ request, side }: Plan, place: number): number =>
  -depthShift(travelAt(side.scale, place), side.angle) / stepTravel(request.lathe.crossFeed)

/** Each deeper than the one before, and none by more than the infeed. */
function roughCounts(plan: Plan, place: number): number[] {
  const { request, cuts, places, backOut } = plan
  const surface = (at: number) => surfaceCount(plan, at)
  const opened = (cuts.opened ?? 0) / stepTravel(request.lathe.crossFeed)
  const wanted = [...new Set(cuts.roughDepths.map((depth) => crossCount(plan, depth, place)))]
  const deepest = Math.max(...places.finish.map((at) => crossCount(plan, cuts.depth, at) - surface(at)))
  return stopsWithin(
    wanted.filter((count) => count > backOut && count > surface(place) + opened),
    passesTo(cuts, request.lathe.crossFeed, deepest + surface(place), surface(place) + opened),
  )
}

/** What roughing has left is one bite, unless the job leaves more than a peck. */
function finishIn(program: Program, plan: Plan, place: number): void {
  const { request, cuts, backOut } = plan
  const { crossFeed } = request.lathe
  const count = crossCount(plan, cuts.depth, place)
  const done = cuts.roughDepths.at(-1)
  const contact = done === undefined ? surfaceCount(plan, place) : crossCount(plan, done, place)
  const most = peckSteps(cuts.peck, crossFeed)
  const passes = { contact, most: mostSteps(cuts.peck, stepTravel(crossFeed)), finish: null }
  const stops = stopsWithin([count], passes).filter((stop) => stop > backOut && stop < count)
  peckIn(program, stops, { contact, most, backOut }, 'rough')
  if (stops.length > 0) dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  dialMove(program, 'feed-in', 'cross-feed', count, 'finish')
}

function finish(program: Program, plan: Plan): void {
  const { side, places, backOut } = plan
  const feeds = side.angle === 0 && places.first !== places.last
  if (feeds && plan.cuts.walls === 'plunged' && places.last - places.first >= 2) {
    finishWalls(program, plan)
    return
  }
  for (const place of feeds ? [places.first] : places.finish) {
    sideTo(program, side, place)
    finishIn(program, plan, place)
    if (feeds) sideAcross(program, side, places.last)
    dialMove(program, 'back-out', 'cross-feed', backOut, place === places.last || feeds ? 'square-shoulder' : 'clear')
  }
}

/**
 * In at the near wall and away from it to the middle; in at the far wall and back to the middle. Between the two the
 * slide that goes back may lag by its lost motion: the sweeps overlap by more than that. A groove that the two plunges
 * cover is not fed across at all.
 */
function finishWalls(program: Program, plan: Plan): void {
  const { side, places, backOut, cuts } = plan
  const { first, last } = places
  const along = (length: Length) => Math.floor(length / stepTravel(side.scale) + 1e-6)
  const lost = Math.ceil(lostTravel(side.scale) / stepTravel(side.scale) - 1e-9)
  const sweeps = last - first > along(cuts.spacing) || last - first > 2 * (lost + WORTH_A_SWEEP)
  const middle = Math.round((first + last) / 2)
  const back = Math.max(first + 1, middle - Math.max(0, lost - along(cuts.spacing)))
  for (const [place, end] of [
    [first, middle],
    [last, back],
  ] as const) {
    sideTo(program, side, place)
    finishIn(program, plan, place)
    if (sweeps) sideAcross(program, side, end)
    dialMove(program, 'back-out', 'cross-feed', backOut, sweeps ? 'clear' : 'square-shoulder')
  }
}

/** Marks beyond the lost motion from which on a slide that goes back surely cleans a floor. Common practice, no source. */
const WORTH_A_SWEEP = 5

const compoundAcross = (): Sequenced => ({
  ok: false,
  code: 'compound-across',
  reason:
    'the compound is set square to the work and cannot move the tool along it, and this form needs more than one place',
  offers: [
    { say: 'move along by the carriage (side-feed: carriage)', change: { sideFeed: 'carriage' } },
    { say: 'set the compound parallel (compound: { angle: 0 })', change: { compoundAngle: 0 } },
  ],
  remedy: 'grind the tool to the whole width',
})
