import type { CornerCuts } from '../moves/cuts.ts'
import { awayToMeasure } from './away.ts'
import { countFor, findableBehindZero, lostTravel } from './dial.ts'
import { dial, hand, measureStop, newProgram, type Program, takeUp, toPlace, zero } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { finishOperation, touchSurface, travelRefusal } from './set-up.ts'

/**
 * A corner tool. Each tip is touched while only that tip overlaps the work; then 0 on both dials is the finished form, and both readings
 * only rise toward it, compound then cross-feed, by ever smaller moves, without backing out between.
 */
export function sequenceCorner(request: Request, cuts: CornerCuts): Sequenced {
  if (request.angle !== 0)
    return {
      ok: false,
      code: 'compound-swung',
      reason: 'a corner tool needs the compound parallel: both dials must move square to each other',
      remedy: 'set the compound parallel for this feature (compound: { angle: 0 })',
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
  touchBothTips(program, request, cuts, backOut)
  const start = startCount(cuts.start)
  toPlace(program, lathe.compound.scale, start(lathe.compound.scale))
  hand(program, 'start')
  dial(program, 'feed-in', 'cross-feed', start(lathe.crossFeed), 'approach')
  alternate(program, request, cuts, backOut)
  dial(program, 'back-out', 'cross-feed', backOut, 'clear')
  finishOperation(program, request, backOut)
  return travelRefusal(request, program) ?? { ok: true, moves: program.moves }
}

/** A little before first contact, so that the first move of each dial is in the clear. */
const startCount = (start: number) => (scale: Request['lathe']['crossFeed']) => countFor(scale, -start, 'lower') - 1

function touchBothTips(program: Program, request: Request, cuts: CornerCuts, backOut: number): void {
  const cross = request.lathe.crossFeed
  hand(program, 'layout')
  hand(program, 'swing')
  hand(program, 'fit-tool')
  hand(program, 'set-speed')
  takeUp(program, 'compound', request.lathe.compound.scale)
  hand(program, 'align', { purpose: 'only-tip' })
  touchSurface(program, request)
  dial(program, 'back-out', 'cross-feed', backOut, 'clear')
  hand(program, 'align')
  hand(program, 'lock', { slide: 'carriage' })
  const onlyTip = countFor(cross, -(cuts.radius - request.tipOverlap), 'lower')
  dial(program, 'return', 'cross-feed', onlyTip, 'only-tip')
  hand(program, 'touch-off', { slide: 'compound' })
  zero(program, 'compound')
  dial(program, 'back-out', 'cross-feed', backOut, 'clear')
}

function alternate(program: Program, request: Request, cuts: CornerCuts, backOut: number): void {
  const { compound, crossFeed } = request.lathe
  // Measured once on the way, as soon as enough is cut to measure and before what is left becomes less than `measureAt`.
  const pause = cuts.offsets.findIndex((offset) => offset < cuts.measureAt)
  for (const [i, offset] of cuts.offsets.entries()) {
    if (i === pause && i > 0) pauseToMeasure(program, request, backOut)
    const along = countFor(compound.scale, -offset, 'lower')
    const inward = countFor(crossFeed, -offset, 'lower')
    if (along > program.at.compound) dial(program, 'feed-in', 'compound', along, 'alternate')
    if (inward > program.at['cross-feed']) dial(program, 'feed-in', 'cross-feed', inward, 'alternate')
  }
}

/** Out, measure, and in again to the same reading at the same place: nothing is cut on the way back. */
function pauseToMeasure(program: Program, request: Request, backOut: number): void {
  const reading = program.at['cross-feed']
  dial(program, 'back-out', 'cross-feed', backOut, 'clear')
  measureStop(program, request.lathe.crossFeed, backOut, awayToMeasure(request.lathe.crossFeed), 'expect-rough', false)
  dial(program, 'feed-in', 'cross-feed', reading, 'come-back')
}
