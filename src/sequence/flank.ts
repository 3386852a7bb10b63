import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import { bounded } from '../moves/bounds.ts'
import type { FlankCuts } from '../moves/cuts.ts'
import type { Purpose } from '../moves/operation.ts'
import { about, say } from '../phrase/say.ts'
import type { Length } from '../units/length.ts'
import { awayToMeasure } from './away.ts'
import { alongFor, depthShift } from './compound.ts'
import { countFor, countsPerTurn, findableBehindZero, pastCount } from './dial.ts'
import { dialMove, handMove, measureStop, newProgram, type Program } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, setUpClear, travelRefusal } from './set-up.ts'
import { mostSteps, stopsWithin } from './stops.ts'

/**
 * A V by flank feed. The compound is set along the tailstock-side flank, or a little steeper: with the cross-feed at one
 * reading its forward feed slides the tool down, and both zeros are where the nose touches on the near line. For each
 * run the compound starts behind the surface, the cross-feed comes in to its reading while the tool is clear, and the
 * compound alone feeds; the cross-feed takes the tool out. Set steeper, the runs end where a straight plunge finishes.
 */
export function sequenceFlank(request: Request, cuts: FlankCuts): Sequenced {
  const lines = cuts.plunged ? plungedLines(request, cuts) : linesOf(request, cuts)
  if (lines === null) return noseWithoutFlat()
  if (lines.length > MOST_RUNS) return noseTooNarrow(request, cuts)
  const program = newProgram(request.origin)
  const { crossFeed } = request.lathe
  const plan: Plan = { request, cuts, backOut: backOutCount(request, lines) }
  setUpClear(program, request, plan.backOut)
  if (cuts.roughDepths.length > 0) {
    for (const line of lines) feedDown(program, plan, line, roughCounts(plan, line), 'rough')
    measureStop(program, crossFeed, plan.backOut, awayToMeasure(crossFeed), 'expect-rough', false, stayStopped)
  }
  for (const line of lines) {
    if (line.plunge !== null && line.cross < line.plunge) plungeAt(program, plan, line)
    else feedDown(program, plan, line, [line.last], 'finish')
  }
  finishOperation(program, request, plan.backOut)
  return travelRefusal(request, program) ?? { ok: true, moves: program.moves }
}

/** The next run comes in first, and then the spindle is started. */
const stayStopped = (): void => {}

type Plan = { readonly request: Request; readonly cuts: FlankCuts; readonly backOut: number }

/**
 * One run down the flank: the cross-feed's reading, the compound's clear start, and the compound's last reading; and
 * where the cross-feed finishes there by a plunge.
 */
type FlankLine = {
  readonly cross: number
  readonly start: number
  readonly last: number
  readonly plunge: number | null
}

/**
 * The flank itself with the cross-feed on 0. A root wider than the nose by more than half a mark needs lines further
 * on: the compound's place is rounded first, then the cross-feed for that place. Null: a nose without a flat cannot
 * make a floor that way.
 */
function linesOf(request: Request, cuts: FlankCuts): FlankLine[] | null {
  const { angle, lathe } = request
  const { scale } = lathe.compound
  const into = depthShift(1, angle)
  const own = countFor(scale, cuts.depth / into, 'lower')
  const places = besideEachOther(request, cuts)
  if (places === null) return null
  const others = places.slice(1).map((place): FlankLine => {
    const last = countFor(scale, place / alongFor(1, angle), 'lower')
    const cross = countFor(lathe.crossFeed, cuts.depth - travelAt(scale, last) * into, 'lower')
    return { cross, start: startCount(request, travelAt(lathe.crossFeed, cross)), last, plunge: null }
  })
  return [{ cross: 0, start: startCount(request, 0), last: own, plunge: null }, ...others]
}

/**
 * Each run ends at the place from which a plunge finishes, short of its depth by what is left; so on the way down the
 * tool is on the headstock side of the flank.
 */
function plungedLines(request: Request, cuts: FlankCuts): FlankLine[] | null {
  const { angle, lathe } = request
  const { scale } = lathe.compound
  const into = depthShift(1, angle)
  const places = besideEachOther(request, cuts)
  return (
    places?.map((place, i) => {
      // A near wall leaves metal with more travel, a far wall with less.
      const last = countFor(scale, place / alongFor(1, angle), i === 0 ? 'higher' : 'lower')
      const shift = travelAt(scale, last) * into
      const plunge = countFor(lathe.crossFeed, cuts.depth - shift, 'lower')
      const roughed = cuts.roughDepths.at(-1)
      const cross =
        roughed === undefined ? plunge : Math.min(plunge, countFor(lathe.crossFeed, roughed - shift, 'lower'))
      return { cross, start: startCount(request, travelAt(lathe.crossFeed, cross)), last, plunge }
    }) ?? null
  )
}

/** Places of the tool at the depth, from flank to flank. Null: more than one, for a nose without a flat. */
function besideEachOther({ angle, lathe }: Request, { first, last, spacing }: FlankCuts): readonly Length[] | null {
  const over = last - first
  if (over <= alongFor(stepTravel(lathe.compound.scale), angle) / 2) return [first]
  if (spacing === null) return null
  const gaps = bounded(Math.ceil(over / spacing - 1e-9))
  return Array.from({ length: gaps + 1 }, (_, i) => first + (over * i) / gaps)
}

/** A round mark at which the tool is clear of the surface with the cross-feed at `cross`, whatever the lost motion. */
function startCount({ lathe, angle, clear }: Request, cross: Length): number {
  const { scale } = lathe.compound
  return pastCount(scale, Math.floor((-cross - clear) / depthShift(stepTravel(scale), angle)))
}

function roughCounts({ request, cuts }: Plan, line: FlankLine): number[] {
  const { lathe, angle } = request
  const counts = cuts.roughDepths.map((depth) =>
    countFor(lathe.compound.scale, (depth - travelAt(lathe.crossFeed, line.cross)) / depthShift(1, angle), 'lower'),
  )
  const wanted = [...new Set(counts)].filter((count) => count > line.start && count <= line.last)
  const into = depthShift(stepTravel(lathe.compound.scale), angle)
  const contact = -travelAt(lathe.crossFeed, line.cross) / into
  const most = mostSteps(cuts.infeed, into)
  // To the place of the plunge itself: what a mark of the cross-feed rounds off must not stop it short of that.
  if (line.plunge !== null)
    return stopsWithin([...wanted.filter((count) => count < line.last), line.last], { contact, most, finish: null })
  const meant = cuts.depth - (cuts.roughDepths.at(-1) ?? 0) <= cuts.infeed + 1
  return stopsWithin(wanted, { contact, most, finish: meant ? line.last : null })
}

/**
 * Compound behind the start, cross-feed in to the line while the tool is clear, down by the compound, out by the
 * cross-feed. With the spindle running nobody counts turns toward the work: it stands until the tool has come in.
 */
function feedDown(program: Program, plan: Plan, line: FlankLine, counts: number[], purpose: 'rough' | 'finish'): void {
  goDown(program, plan, line, counts, purpose)
  dialMove(program, 'back-out', 'cross-feed', plan.backOut, 'clear')
}

function goDown(program: Program, plan: Plan, line: FlankLine, counts: number[], purpose: Purpose): void {
  const behind = line.start < program.at.compound
  dialMove(program, behind ? 'go-past' : 'shift', 'compound', line.start, 'to-place')
  bringIn(program, plan, line.cross)
  for (const count of counts) dialMove(program, 'feed-in', 'compound', count, purpose)
}

function bringIn(program: Program, { request }: Plan, cross: number): void {
  const runs = program.moves.findLast(({ action }) => action === 'start' || action === 'stop')?.action === 'start'
  const counted = runs && isCounted(program, request.lathe, cross)
  if (counted) handMove(program, 'stop')
  dialMove(program, 'return', 'cross-feed', cross, 'approach')
  if (!runs || counted) handMove(program, 'start')
}

/**
 * Down the way that the last run has cut, and straight in from there: "last few finishing cuts straight in with the
 * cross feed, for an even finish on both sides" (US Navy training manual 14345). So the plunge is a few marks, and no
 * turns are counted with the spindle running.
 */
function plungeAt(program: Program, plan: Plan, line: FlankLine): void {
  goDown(program, plan, line, [line.last], 'approach')
  dialMove(program, 'feed-in', 'cross-feed', line.plunge!, 'finish')
  dialMove(program, 'back-out', 'cross-feed', plan.backOut, 'clear')
}

/** More than a turn in, and no stop that was set there before the spindle ran. */
function isCounted(program: Program, { crossFeed, crossFeedStop }: Request['lathe'], to: number): boolean {
  const turn = countsPerTurn(crossFeed)
  if (turn === null || to - program.at['cross-feed'] <= turn) return false
  const before = program.moves.findLast(({ action, slide }) => action === 'return' && slide === 'cross-feed')
  return crossFeedStop !== true || before?.count !== to
}

/** Clear of the largest stock that the edge passes, from the end of any line, at the full lost motion. */
function backOutCount({ lathe, angle, edge, heightOver, clear }: Request, lines: readonly FlankLine[]): number {
  const { crossFeed, compound } = lathe
  const travels = lines.flatMap(({ start, last }) => [start, last]).map((count) => travelAt(compound.scale, count))
  const lowest = Math.min(0, ...travels) - lostTravel(compound.scale)
  const highest = Math.max(...travels)
  const high = heightOver(alongFor(lowest, angle) + edge.from, alongFor(highest, angle) + edge.to)
  const need = high + clear + depthShift(highest, angle) + edge.deepest + lostTravel(crossFeed)
  return wholeTurnsOut(crossFeed, Math.max(need, stepTravel(crossFeed)))
}

/** A V is several turns deep, and each run returns to 0: whole turns out and the same turns in. */
function wholeTurnsOut(scale: Request['lathe']['crossFeed'], travel: Length): number {
  const turn = countsPerTurn(scale)
  if (turn === null || travel <= travelAt(scale, turn)) return findableBehindZero(scale, travel)
  return -Math.ceil(travel / travelAt(scale, turn) - 1e-9) * turn
}

/** Nobody goes down the same flank more often, side by side, with every infeed each time: common practice, no source. */
const MOST_RUNS = 12

/** Runs are a part of the nose apart, so their number goes by its width: the one that is told was worked out so. */
function noseTooNarrow({ units }: Request, { first, last, spacing, nose }: FlankCuts): Sequenced {
  const root = last - first + nose
  const part = spacing! / nose
  const show = (length: Length) => about('planned', length, units, units === 'inch' ? 4 : 3)
  return {
    ok: false,
    code: 'nose-too-narrow',
    reason: say`a root of ${show(root)} with a nose of ${show(nose)} would take the tool down the flank ${Math.ceil((last - first) / spacing! - 1e-9) + 1} times beside each other, more than ${MOST_RUNS}`,
    remedy: say`grind the nose ${show(root / (part * (MOST_RUNS - 1)))} wide or wider, or leave out method: flank-feed: a plunge feeds across the floor`,
  }
}

const noseWithoutFlat = (): Sequenced => ({
  ok: false,
  code: 'nose-too-narrow',
  reason: 'flank feed cuts a flat root with the flat of the nose, and this tool comes to a point',
  remedy: 'grind a flat on the nose, or leave out method: flank-feed: a plunge feeds across the floor',
})
