import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import type { Length } from '../units/length.ts'
import { alongFor, depthShift } from './compound.ts'
import { pastCount } from './dial.ts'
import { dialMove, handMove, type Program } from './program.ts'
import type { Request } from './request.ts'
import { type Side, sideTo } from './side.ts'

/**
 * Starts the spindle, but never with the tool against a shoulder: backed out, it is still below the top of the face
 * that it was brought against. So it first goes to `next`, the place where it cuts first, and then starts; if it
 * touches there too, it goes past that place, and onto it after the start.
 */
export function startClear(program: Program, request: Request, side: Side, backOut: number, next: number): void {
  const touches = touching(request, side, backOut)
  if (!touches(program.at[side.slide])) {
    handMove(program, 'start')
    return
  }
  if (!touches(next)) {
    sideTo(program, side, next)
    handMove(program, 'start')
    return
  }
  const { slide, scale } = side
  moveSide(program, side, 'go-past', Math.min(pastCount(scale, next), pastCount(scale, program.at[slide])))
  handMove(program, 'start')
  moveSide(program, side, 'return', next)
}

/** Whether the edge, backed out, is within the error of a touch-off of a shoulder that is higher than the back-out. */
export function touching({ lathe, edge, heightOver }: Request, { scale, angle }: Side, backOut: number) {
  const near = nearby(lathe.accuracy.touchOff, scale)
  const out = -travelAt(lathe.crossFeed, backOut) - lostTravel(lathe.crossFeed) - edge.deepest
  return (count: number): boolean => {
    const travel = travelAt(scale, count)
    const at = alongFor(travel, angle)
    return heightOver(at + edge.from - near, at + edge.to + near) > Math.max(0, out - depthShift(travel, angle))
  }
}

/** The carriage is unlocked for it and locked again. */
function moveSide(program: Program, { slide }: Side, action: 'go-past' | 'return', count: number): void {
  if (slide === 'carriage') handMove(program, 'unlock', { slide })
  dialMove(program, action, slide, count, 'to-place')
  if (slide === 'carriage') handMove(program, 'lock', { slide })
}

/**
 * How far beside the edge a shoulder counts for the back-out, if going past its zero does not take the slide far enough
 * from it.
 */
export function besideEdge({ lathe }: Request, { scale, angle }: Side): Length {
  const near = nearby(lathe.accuracy.touchOff, scale)
  const past = -travelAt(scale, pastCount(scale, 0)) - lostTravel(scale)
  return alongFor(past, angle) < near ? near : 0
}

const nearby = (touchOff: Length, scale: Side['scale']): Length => touchOff + stepTravel(scale) / 2
