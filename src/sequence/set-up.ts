import { stepTravel, travelAt } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import { about, say } from '../phrase/say.ts'
import { awayToMeasure } from './away.ts'
import { dialMove, handMove, measureStop, type Program, takeUp, zero } from './program.ts'
import type { Request, Sequenced } from './request.ts'

/**
 * From layout to the zeros along the work. Locking shifts the carriage, so the zeros are set after the lock and a
 * second look at the line. `carriage`: its scale, if it moves the tool along by readings.
 */
export function setUp(program: Program, request: Request, carriage: Scale | null = null): void {
  handMove(program, 'layout')
  // Swinging the compound turns the tool with it: only what is set square afterward stays square.
  handMove(program, 'swing')
  handMove(program, 'fit-tool')
  handMove(program, 'set-speed')
  takeUp(program, 'compound', request.lathe.compound.scale)
  handMove(program, 'align')
  if (carriage !== null) takeUp(program, 'carriage', carriage)
  handMove(program, 'lock', { slide: 'carriage' })
  zero(program, 'compound')
  if (carriage !== null) zero(program, 'carriage')
}

export function touchSurface(program: Program, _request: Request): void {
  handMove(program, 'touch-off', { slide: 'cross-feed' })
  zero(program, 'cross-feed')
}

/** The set-up, both zeros, and the tool out of the work. `carriage`: its scale, if it moves the tool along by readings. */
export function setUpClear(program: Program, request: Request, backOut: number, carriage: Scale | null = null): void {
  const out = (): void => dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
  if (!request.touchesBeside) {
    setUp(program, request, carriage)
    touchSurface(program, request)
    out()
    return
  }
  for (const action of ['layout', 'swing', 'fit-tool', 'set-speed'] as const) handMove(program, action)
  takeUp(program, 'compound', request.lathe.compound.scale)
  touchSurface(program, request)
  out()
  handMove(program, 'align')
  if (carriage !== null) takeUp(program, 'carriage', carriage)
  handMove(program, 'lock', { slide: 'carriage' })
  zero(program, 'compound')
  if (carriage !== null) zero(program, 'carriage')
}

/** Stop, measure what is finished, unlock the carriage and run it away, deburr. */
export function finishOperation(program: Program, request: Request, backOut: number): void {
  const scale = request.lathe.crossFeed
  measureStop(program, scale, backOut, awayToMeasure(scale), 'expect-finish', true)
  handMove(program, 'unlock', { slide: 'carriage' })
  handMove(program, 'deburr')
}

/** Refuses if the compound's greatest minus smallest reading is more than its travel. */
export function travelRefusal(request: Request, program: Program): Sequenced | null {
  const { scale, travel } = request.lathe.compound
  if (travel === null) return null
  const counts = program.moves
    .filter((move) => move.slide === 'compound' && typeof move.count === 'number')
    .map((move) => move.count!)
  const used = travelAt(scale, Math.max(0, ...counts) - Math.min(0, ...counts))
  if (used <= travel) return null
  const show = (length: number) => about('planned', length, request.units)
  return {
    ok: false,
    code: 'beyond-travel',
    reason: say`the compound would have to move ${show(used)}, it has ${show(travel)}`,
    offers: [{ say: 'move along by the carriage (side-feed: carriage)', change: { sideFeed: 'carriage' } }],
    remedy: 'take a wider tool, or split the groove in two features placed one after the other',
  }
}

/** Refuses if the indicator on the carriage must follow further than its range. */
export function rangeRefusal(request: Request, program: Program): Sequenced | null {
  const { carriage } = request.lathe
  const range = carriage?.kind === 'readout' ? (carriage.range ?? null) : null
  if (carriage === null || range === null) return null
  const counts = program.moves.flatMap(({ slide, count }) => (slide === 'carriage' ? [count ?? 0] : []))
  const used = (Math.max(0, ...counts) - Math.min(0, ...counts)) * stepTravel(carriage)
  if (used <= range) return null
  const show = (length: number) => about('planned', length, request.units)
  return {
    ok: false,
    code: 'beyond-travel',
    reason: say`the indicator on the carriage would have to follow ${show(used)}, its range is ${show(range)}`,
    remedy: 'take a wider tool, an indicator of longer range, or go to the scribed lines (side-feed: lines)',
  }
}
