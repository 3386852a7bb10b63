import type { Lathe } from '../lathe/lathe.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Before } from '../replay/bench.ts'
import { runOperation } from '../replay/run.ts'
import { broughtToLines } from './at-lines.ts'
import type { Budgeted } from './budgeted.ts'
import { causesOf } from './causes.ts'
import { summed } from './summed.ts'

/**
 * For every operation and every wanted dimension: what it may come out at when each stated error of lathe and tool does its worst.
 * Each error is made alone, both ways, the moves are replayed with it and the form is measured: there is no formula per kind of feature.
 */
export const budget = (
  lathe: Lathe,
  setup: Setup,
  operations: readonly Operation[],
): readonly (readonly Budgeted[])[] => {
  let before: Before = { surely: setup.stock, possibly: setup.stock, allowed: [] }
  return operations.map((operation) => {
    const planned = runOperation(lathe, setup, operation, before, FAST).trace
    const atLines = broughtToLines(lathe, setup, operation, before)
    const effects = causesOf(lathe, operation, before, planned).map((cause) => ({
      name: cause.name,
      sizes: cause.ways
        .map(atLines)
        .map((way) => runOperation(lathe, setup, way.operation, way.before, { ...FAST, shift: way.shift }).trace.sizes),
    }))
    before = { ...before, surely: planned.surely, possibly: planned.possibly }
    return operation.dimensions.map((dimension, index) => summed(dimension, index, planned.sizes, effects))
  })
}

const FAST = { rules: false, shift: null } as const
