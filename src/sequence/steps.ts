import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import { bounded } from '../moves/bounds.ts'
import type { StepCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import { awayToMeasure } from './away.ts'
import { startClear } from './begin.ts'
import { countFor, findableBehindZero, pastCount } from './dial.ts'
import { peckIn, peckSteps } from './pecks.ts'
import { dialMove, handMove, measureStop, newProgram, type Program, takeUp, toPlace, zero } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, setUp, touchSurface, travelRefusal } from './set-up.ts'
import { compoundOf } from './side.ts'
import { cutAt, metalUnder, type Profile, profileOf } from './steps-metal.ts'
import { type StepPlaces, stepPlaces } from './steps-places.ts'
import { cuspNotKept, MOST_PLACES, swung, tooManyPlaces } from './steps-refusals.ts'

/**
 * A form cut step by step: roughed by infeeds with the middle first, then every place of the finish forward, from near
 * to far.
 */
export function sequenceSteps(request: Request, cuts: StepCuts): Sequenced {
  if (request.angle !== 0) return swung()
  const { lathe } = request
  const places = stepPlaces(cuts, { along: lathe.compound.scale, inward: lathe.crossFeed })
  if (cuts.cuspGiven && places.exact > cuts.cusp * (1 + 1e-9)) return cuspNotKept(request, places)
  if (places.counts.length > MOST_PLACES) return tooManyPlaces(request, cuts, places)
  const program = newProgram(request.origin)
  const plan: Plan = { request, cuts, backOut: backOutCount(request, cuts, places), profile: profileOf(request, cuts) }
  begin(program, plan)
  dialMove(program, 'back-out', 'cross-feed', plan.backOut, 'clear')
  const start = (next: number) => startClear(program, request, compoundOf(request), plan.backOut, next)
  const rough = roughPlaces(plan, places)
  start(rough[0] ?? places.counts[0]!)
  const before = program.moves.length
  for (const place of rough) roughPlace(program, plan, place, cuts.leave, 'rough')
  // Around a corner there is no size to measure before it is finished.
  if (program.moves.length > before && cuts.besideFace === null)
    measureStop(program, lathe.crossFeed, plan.backOut, awayToMeasure(lathe.crossFeed), 'expect-rough', false, () =>
      start(places.counts[0]!),
    )
  for (const place of places.counts) {
    if (place === places.across?.from) floorAcross(program, plan, places.across)
    else if (place !== places.across?.to) roughPlace(program, plan, place, 0, 'finish')
  }
  finishOperation(program, request, plan.backOut)
  return travelRefusal(request, program) ?? { ok: true, moves: program.moves }
}

type Plan = {
  readonly request: Request
  readonly cuts: StepCuts
  readonly backOut: number
  readonly profile: Profile
}

/** On lines, as usual. Against a face: the surface first, then the side of the tool below it, against the face. */
function begin(program: Program, plan: Plan): void {
  const { request, cuts, backOut } = plan
  if (cuts.besideFace === null) {
    setUp(program, request)
    touchSurface(program, request)
    return
  }
  for (const action of ['layout', 'swing', 'fit-tool', 'set-speed'] as const) handMove(program, action)
  takeUp(program, 'compound', request.lathe.compound.scale)
  touchSurface(program, request)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  handMove(program, 'align')
  handMove(program, 'lock', { slide: 'carriage' })
  dialMove(program, 'return', 'cross-feed', countFor(request.lathe.crossFeed, cuts.besideFace, 'higher'), 'approach')
  handMove(program, 'touch-off', { slide: 'compound' })
  zero(program, 'compound')
}

/** Clear of the largest stock under the edge wherever it goes, at the full lost motion. */
function backOutCount(request: Request, cuts: StepCuts, places: StepPlaces): number {
  const { lathe, edge } = request
  const scale = lathe.compound.scale
  const from = travelAt(scale, pastCount(scale, Math.min(0, places.counts[0]!))) - lostTravel(scale)
  const need = request.heightOver(from + edge.from, cuts.last + edge.to) + request.clear + lostTravel(lathe.crossFeed)
  return findableBehindZero(lathe.crossFeed, Math.max(need, stepTravel(lathe.crossFeed)))
}

/**
 * The middle, if the form has one, then evenly from near to far; between two stretches evenly over the floor, and up
 * each of them as a stair, so that no metal is left beside the floor that is fed across. Around a corner as a stair, so
 * that no place of the finish cuts much more than the allowance.
 */
function roughPlaces({ request, cuts }: Plan, { counts, across }: StepPlaces): number[] {
  const scale = request.lathe.compound.scale
  if (cuts.middle === null) return stairPlaces(scale, cuts, counts)
  const span = counts[counts.length - 1]! - counts[0]!
  const sides = Math.min(Math.ceil((cuts.leaveSides ?? 0) / stepTravel(scale) - 1e-9), Math.floor(span / 2))
  const [first, last] = [counts[0]! + sides, counts[0]! + span - sides]
  const middle = countFor(scale, cuts.middle, 'lower')
  if (across === null) return [...new Set([middle, ...evenly(scale, cuts, first, last)])]
  const inside = (count: number) => Math.min(last, Math.max(first, count))
  const up = stairPlaces(scale, cuts, counts.filter((count) => count >= across.to).toReversed()).reverse()
  const down = stairPlaces(
    scale,
    cuts,
    counts.filter((count) => count <= across.from),
  )
  const floor = evenly(scale, cuts, inside(across.from), inside(across.to))
  return [...new Set([middle, ...down.map(inside), ...floor, ...up.map(inside)])]
}

/** Evenly from one place to another, each no further than the edge reaches. */
function evenly(scale: Scale, cuts: StepCuts, first: number, last: number): number[] {
  const apart = Math.max(1, cuts.roughSpacing / stepTravel(scale))
  const gaps = bounded(Math.max(1, Math.ceil((last - first) / apart - 1e-9)))
  return Array.from({ length: gaps + 1 }, (_, i) => first + Math.round(((last - first) * i) / gaps))
}

/** The places of the finish between which the depth changes by up to an infeed. */
function stairPlaces(scale: Scale, cuts: StepCuts, counts: readonly number[]): number[] {
  const depth = (count: number) => cuts.depthAt(travelAt(scale, count))
  const kept: number[] = []
  counts.forEach((count, i) => {
    const next = counts[i + 1]
    const before = kept.at(-1)
    if (before === undefined || next === undefined || Math.abs(depth(before) - depth(next)) > cuts.infeed)
      kept.push(count)
  })
  return kept
}

/**
 * At one place: in to the form minus the finish allowance, no more than the infeed at a time into metal, and out. If
 * there is no metal: no moves.
 */
function roughPlace(program: Program, plan: Plan, place: number, leave: Length, purpose: 'rough' | 'finish'): void {
  const { request, cuts, backOut, profile } = plan
  const scale = request.lathe.crossFeed
  const at = travelAt(request.lathe.compound.scale, place)
  const target = countFor(scale, cuts.depthAt(at) - leave, 'lower')
  const depth = travelAt(scale, target)
  const metal = metalUnder(profile, at, depth)
  if (target <= 0 || metal <= 0) return
  toPlace(program, request.lathe.compound.scale, place)
  const counts = infeeds(scale, depth - metal, target, Math.min(cuts.infeed, cuts.peck))
  const contact = (depth - metal) / stepTravel(scale)
  peckIn(program, counts, { contact, most: peckSteps(cuts.peck, scale), backOut }, purpose)
  cutAt(profile, at, depth)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
}

/** Readings to stop at, from where the edge first touches; a dial cannot feed less than a mark. */
function infeeds(scale: Scale, contact: Length, target: number, infeed: Length): number[] {
  const step = stepTravel(scale)
  const most = Math.max(1, Math.floor(infeed / step + 1e-9))
  const first = Math.max(Math.floor((contact + infeed) / step + 1e-9), Math.floor(contact / step) + 1)
  const stops: number[] = []
  for (let count = first; count < target; count += most) stops.push(count)
  // A very thin last pass would only rub: then all are made equal.
  if (stops.length > 0 && target - stops.at(-1)! < most / 4) {
    const from = first - most
    const each = (target - from) / (stops.length + 1)
    return [...stops.map((_, i) => Math.round(from + each * (i + 1))), target]
  }
  return [...stops, target]
}

/**
 * The floor between two stretches: in to the whole depth at the end of the first, across slowly, and out where the
 * second begins.
 */
function floorAcross(program: Program, plan: Plan, { from, to }: { from: number; to: number }): void {
  const { request, cuts, backOut, profile } = plan
  const { crossFeed: scale, compound } = request.lathe
  const [start, end] = [travelAt(compound.scale, from), travelAt(compound.scale, to)]
  const target = countFor(scale, cuts.floor!.depth, 'lower')
  const depth = travelAt(scale, target)
  const metal = metalUnder(profile, start, depth)
  toPlace(program, compound.scale, from)
  for (const count of metal > 0 ? infeeds(scale, depth - metal, target, Math.min(cuts.infeed, cuts.peck)) : [target])
    dialMove(program, 'feed-in', 'cross-feed', count, 'finish')
  if (to > from) dialMove(program, 'feed-across', 'compound', to, 'take-out-floor')
  for (const at of [start, end]) cutAt(profile, at, depth)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
}
