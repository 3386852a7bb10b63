import { lostTravel, travelAt } from '../dials/travel.ts'
import type { CornerCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import { awayToMeasure } from './away.ts'
import { countFor, findableBehindZero } from './dial.ts'
import {
  dialMove,
  handMove,
  measureStop,
  newProgram,
  outToMeasure,
  type Program,
  takeUp,
  toPlace,
  zero,
} from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, touchSurface, travelRefusal } from './set-up.ts'

/**
 * A corner tool. Each tip is touched off while only that tip overlaps the work; then 0 on both dials is the finished
 * form, and both readings only rise toward it, compound then cross-feed, by ever smaller moves, without backing out
 * between them.
 */
export function sequenceCorner(request: Request, cuts: CornerCuts): Sequenced {
  if (request.angle !== 0)
    return {
      ok: false,
      code: 'compound-swung',
      reason: 'a corner tool needs the compound parallel: both dials must move square to each other',
      offers: [
        { say: 'set the compound parallel for this feature (compound: { angle: 0 })', change: { compoundAngle: 0 } },
      ],
      remedy: 'step around it with a round or a square tool and the compound parallel',
    }
  const program = newProgram(request.origin)
  const { lathe } = request
  const backOut = findableBehindZero(
    lathe.crossFeed,
    request.edge.deepest +
      request.clear +
      lostTravel(lathe.crossFeed) +
      request.heightOver(-cuts.radius, request.edge.to),
  )
  const onlyTip = countFor(lathe.crossFeed, -(cuts.edgeAt(request.edge.from) - request.tipOverlap.byDial), 'lower')
  touchBothTips(program, request, onlyTip, backOut)
  chamferBetween(program, request, backOut)
  const short = shortOf(request, cuts, onlyTip)
  toPlace(program, lathe.compound.scale, startCount(lathe.compound.scale, cuts.start - short.along))
  handMove(program, 'start')
  dialMove(program, 'feed-in', 'cross-feed', startCount(lathe.crossFeed, cuts.start - short.deep), 'approach')
  alternate(program, request, cuts, short, backOut)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  finishOperation(program, request, backOut)
  return travelRefusal(request, program) ?? { ok: true, moves: program.moves }
}

/** A little before first contact, so that the first move of each dial cuts nothing. */
const startCount = (scale: Request['lathe']['crossFeed'], start: Length) => countFor(scale, -start, 'lower') - 1

/**
 * A tip touches a little early if it overlaps the work by more than its very end: the hollow has risen over that part.
 * Returns how far short of the finished form the tool is with each dial at 0. pm.
 */
function shortOf({ lathe, edge, tipOverlap }: Request, { edgeAt }: CornerCuts, onlyTip: number) {
  const deep = edgeAt(edge.to - tipOverlap.byEye)
  const overlapped = deep - travelAt(lathe.crossFeed, onlyTip)
  let [low, high] = [edge.from, edge.to]
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2
    if (edgeAt(middle) > overlapped) low = middle
    else high = middle
  }
  return { along: low, deep }
}

function touchBothTips(program: Program, request: Request, onlyTip: number, backOut: number): void {
  handMove(program, 'layout')
  handMove(program, 'swing')
  handMove(program, 'fit-tool')
  handMove(program, 'set-speed')
  takeUp(program, 'compound', request.lathe.compound.scale)
  handMove(program, 'align', { purpose: 'only-tip' })
  touchSurface(program, request)
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  handMove(program, 'align')
  handMove(program, 'lock', { slide: 'carriage' })
  dialMove(program, 'return', 'cross-feed', onlyTip, 'only-tip')
  handMove(program, 'touch-off', { slide: 'compound' })
  zero(program, 'compound')
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
}

/**
 * Only now: a tip that is touched off near the corner must find its surface there. By a file, as another tool would take this one from its place; the tool
 * far out, and back to the same mark.
 */
function chamferBetween(program: Program, { lathe }: Request, backOut: number): void {
  outToMeasure(program, lathe.crossFeed, backOut, awayToMeasure(lathe.crossFeed))
  handMove(program, 'start')
  handMove(program, 'deburr', { purpose: 'chamfer' })
  handMove(program, 'stop')
  dialMove(program, 'return', 'cross-feed', backOut, 'come-back')
}

function alternate(
  program: Program,
  request: Request,
  cuts: CornerCuts,
  short: { readonly along: Length; readonly deep: Length },
  backOut: number,
): void {
  const { compound, crossFeed } = request.lathe
  // Measured once on the way, as soon as enough is cut to measure and before the rest becomes less than `measureAt`.
  const pause = cuts.offsets.findIndex((offset) => offset < cuts.measureAt)
  for (const [i, offset] of cuts.offsets.entries()) {
    if (i === pause && i > 0) pauseToMeasure(program, request, backOut)
    const along = countFor(compound.scale, short.along - offset, 'lower')
    const inward = countFor(crossFeed, short.deep - offset, 'lower')
    if (along > program.at.compound) dialMove(program, 'feed-in', 'compound', along, 'alternate')
    if (inward > program.at['cross-feed']) dialMove(program, 'feed-in', 'cross-feed', inward, 'alternate')
  }
}

/** Out, measure, and in again to the same reading at the same place: nothing is cut on the way back. */
function pauseToMeasure(program: Program, request: Request, backOut: number): void {
  const reading = program.at['cross-feed']
  dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  measureStop(program, request.lathe.crossFeed, backOut, awayToMeasure(request.lathe.crossFeed), 'expect-rough', false)
  dialMove(program, 'feed-in', 'cross-feed', reading, 'come-back')
}
