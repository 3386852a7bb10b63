import type { Scale } from '../lathe/lathe.ts'
import type { Degrees } from '../units/dimension.ts'
import { pastCount } from './dial.ts'
import { dialMove, handMove, type Program, toPlace } from './program.ts'
import type { Request } from './request.ts'

/**
 * The slide that moves the tool along the work, by its readings. The carriage moves parallel with the ways, at any
 * angle of the compound.
 */
export type Side = { readonly slide: 'compound' | 'carriage'; readonly scale: Scale; readonly angle: Degrees }

export function sideOf(request: Request): Side {
  const { lathe, sideFeed } = request
  return sideFeed === 'carriage' && lathe.carriage !== null
    ? { slide: 'carriage', scale: lathe.carriage, angle: 0 }
    : compoundOf(request)
}

export const compoundOf = ({ lathe, angle }: Request): Side => ({
  slide: 'compound',
  scale: lathe.compound.scale,
  angle,
})

/** To a place while the tool is clear. The carriage is unlocked for it and locked again before anything is cut. */
export function sideTo(program: Program, side: Side, count: number): void {
  if (side.slide === 'compound') {
    toPlace(program, side.scale, count)
    return
  }
  const now = program.at.carriage
  if (count === now) return
  handMove(program, 'unlock', { slide: 'carriage' })
  if (count > now || side.scale.kind === 'readout') dialMove(program, 'move-carriage', 'carriage', count, 'to-place')
  else {
    dialMove(program, 'go-past', 'carriage', pastCount(side.scale, count), 'to-place')
    dialMove(program, 'return', 'carriage', count, 'to-place')
  }
  handMove(program, 'lock', { slide: 'carriage' })
}

/** Across the floor with the tool in the work: the carriage is unlocked only for this. */
export function sideAcross(program: Program, side: Side, count: number): void {
  const carriage = side.slide === 'carriage'
  if (carriage) handMove(program, 'unlock', { slide: 'carriage' })
  dialMove(program, 'feed-across', side.slide, count, 'take-out-floor')
  if (carriage) handMove(program, 'lock', { slide: 'carriage' })
}
