import type { Lathe } from '../lathe/lathe.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Size } from '../moves/trace.ts'
import type { Before } from '../replay/bench.ts'
import { goOn, halfway } from '../replay/halfway.ts'
import { runOperation } from '../replay/run.ts'
import { sizesShifted } from '../replay/shifted.ts'
import { broughtToLines } from './at-lines.ts'
import type { Budgeted } from './budgeted.ts'
import { causesOf, type Way } from './causes.ts'
import { summed } from './summed.ts'

/**
 * For every wanted dimension of one operation, from the part `before` it: what it may come out at when each stated error of lathe and tool does its worst.
 * Each error is made alone, both ways, and all readings of one slide are made wrong together; the moves are replayed with it and the form is
 * measured: there is no formula per kind of feature.
 */
export const budgetOf = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  { surely, possibly }: Pick<Before, 'surely' | 'possibly'>,
): readonly Budgeted[] => {
  const before: Before = { surely, possibly, allowed: [] }
  const planned = runOperation(lathe, setup, operation, before, FAST).trace
  const atLines = broughtToLines(lathe, setup, operation, before)
  const causes = causesOf(lathe, operation, before, planned).map((cause) => ({
    ...cause,
    ways: cause.ways.map(atLines),
  }))
  const ways = causes.flatMap((cause) => cause.ways)
  const sizesOf = replayed(lathe, setup, operation, before, ways)
  const effects = causes.map((cause) => ({ ...cause, sizes: cause.ways.map(sizesOf) }))
  return operation.dimensions.map((dimension, index) => summed(dimension, index, planned.sizes, effects))
}

/**
 * The sizes that every way ends at. Where nothing but a reading is wrong, all is as planned until that reading is used; where nothing but the zeros are,
 * all that is cut moves as one.
 */
const replayed = (lathe: Lathe, setup: Setup, operation: Operation, before: Before, ways: readonly Way[]) => {
  const only = ways.flatMap((way) => (way.shift !== null && way.operation === operation ? [way.shift] : []))
  const shifted = sizesShifted(lathe, setup, operation, before, only)
  const whole = halfway(lathe, setup, operation, before, operation.moves.length, FAST)
  return (way: Way): readonly Size[] =>
    (way.operation === operation && way.shift !== null && shifted.get(way.shift)) ||
    (way.rigid !== undefined && whole !== null && goOn(whole, way.operation, before, way.rigid).trace.sizes) ||
    runOperation(lathe, setup, way.operation, way.before, { ...FAST, shift: way.shift }).trace.sizes
}

const FAST = { rules: false, shift: null } as const
