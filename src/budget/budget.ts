import type { Lathe } from '../lathe/lathe.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Size } from '../moves/trace.ts'
import type { Before } from '../replay/bench.ts'
import { goOn, madeOn } from '../replay/halfway.ts'
import { runOperation } from '../replay/run.ts'
import { madeRight, type Right } from '../replay/shifted.ts'
import { broughtToLines } from './at-lines.ts'
import type { Budgeted } from './budgeted.ts'
import { type AtStop, causesOf, type Way } from './causes.ts'
import { summed } from './summed.ts'

/**
 * The range of every wanted dimension of one operation on the part `before` it, when each stated error of lathe and tool is at its worst. Each error
 * is made alone, both ways; all readings of one slide are also made wrong together. The moves are replayed with the error and the form is measured:
 * there is no formula for a kind of feature.
 */
export const budgetOf = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  before: Pick<Before, 'surely' | 'possibly'>,
  atStop?: AtStop,
): readonly Budgeted[] => budgetsOf(lathe, setup, operation, before)(atStop)

/** The same for one operation cut without measuring and measured in several ways: what a misread dial does is replayed once. */
export const budgetsOf = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  { surely, possibly }: Pick<Before, 'surely' | 'possibly'>,
): ((atStop?: AtStop) => readonly Budgeted[]) => {
  const before: Before = { surely, possibly, allowed: [] }
  const right = madeRight(lathe, setup, operation, before)
  const planned = right.trace
  const atLines = broughtToLines(lathe, setup, operation, before)
  const sizesOf = keptByShift(operation, replayed(lathe, setup, operation, before, right))
  return (atStop) => {
    const causes = causesOf(lathe, operation, before, planned, atStop).map((cause) => ({
      ...cause,
      ways: cause.ways.map(atLines),
    }))
    const effects = causes.map((cause) => ({ ...cause, sizes: cause.ways.map(sizesOf) }))
    return operation.dimensions.map((dimension, index) => summed(dimension, index, planned.sizes, effects))
  }
}

/** One reading that is wrong by so much, and nothing else, does the same whatever is measured. */
const keptByShift = (operation: Operation, sizesOf: (way: Way) => readonly Size[]) => {
  const kept = new Map<string, readonly Size[]>()
  return (way: Way): readonly Size[] => {
    if (way.operation !== operation || way.shift === null || way.rigid !== undefined) return sizesOf(way)
    const key = JSON.stringify(way.shift)
    const known = kept.get(key) ?? sizesOf(way)
    kept.set(key, known)
    return known
  }
}

/**
 * The sizes that come of each error. If only a reading is wrong, everything is as planned until that reading is used. If only the zeros are wrong,
 * everything that is cut moves together.
 */
const replayed = (lathe: Lathe, setup: Setup, operation: Operation, before: Before, right: Right) => {
  return (way: Way): readonly Size[] => {
    if (way.operation === operation && way.shift !== null && !('from' in way.shift)) return right.shifted(way.shift)
    if (way.rigid !== undefined && right.whole !== null)
      return goOn(right.whole, way.operation, before, way.rigid).trace.sizes
    if (way.before !== before && right.whole !== null) return madeOn(right.whole, way.operation, way.before).trace.sizes
    return runOperation(lathe, setup, way.operation, way.before, { rules: false, shift: way.shift }).trace.sizes
  }
}
