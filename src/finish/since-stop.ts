import type { Operation } from '../moves/operation.ts'
import type { Fault, OperationTrace } from '../moves/trace.ts'
import { goOn, type Halfway, halfway } from '../replay/halfway.ts'
import { finished } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import type { Shop } from './measured.ts'

/** The moves up to a stop, and for which shop they were replayed. */
type Made = Pick<Shop, 'lathe' | 'setup' | 'progress'> & { readonly operation: Operation; readonly to: Halfway | null }

/** Kept by the edge of the tool: every row of a table goes on from the same moves. */
const made = new WeakMap<Operation['edge'], Made[]>()

/**
 * Replays only what comes after the stop, with a bottom larger than expected by `off` (pm of diameter). The moves before it are the same, from a zero
 * that is off by half of that. Null if they do not move as one. The trace does not say where the slides went.
 */
export const sinceTheStop = (
  shop: Shop,
  changed: Operation,
  off: Length,
): { readonly trace: OperationTrace; readonly faults: readonly Fault[] } | null => {
  const { progress, stop } = shop
  const before = { ...progress, allowed: finished(progress.allowed, changed) }
  const planned: Operation = {
    ...changed,
    off: { along: changed.off?.along ?? 0, deep: (changed.off?.deep ?? 0) + off / 2 },
  }
  const known = made.get(changed.edge) ?? []
  made.set(changed.edge, known)
  let found = known.find((one) => sameUntil(one, shop, planned, stop.at))
  if (found === undefined) {
    const to = halfway(shop.lathe, shop.setup, planned, before, stop.at, { rules: true, shift: null })
    found = { ...shop, operation: planned, to }
    known.push(found)
  }
  if (found.to === null) return null
  const { trace, faults } = goOn(found.to, changed, before, { along: 0, deep: -off / 2 })
  return { trace, faults: faults.map((fault): Fault => ({ ...fault, operation: 0 })) }
}

const sameUntil = (one: Made, shop: Shop, planned: Operation, at: number): boolean =>
  one.lathe === shop.lathe &&
  one.setup === shop.setup &&
  one.progress === shop.progress &&
  one.operation.placing === planned.placing &&
  one.operation.touch === planned.touch &&
  one.operation.lines === planned.lines &&
  one.operation.angle === planned.angle &&
  one.operation.surface === planned.surface &&
  one.operation.zeroMeasured === planned.zeroMeasured &&
  one.operation.off!.along === planned.off!.along &&
  one.operation.off!.deep === planned.off!.deep &&
  one.operation.moves.slice(0, at).every((move, i) => move === planned.moves[i])
