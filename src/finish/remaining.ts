import { offForm } from '../judge/room.ts'
import type { Instrument, Operation, WantedDimension } from '../moves/operation.ts'
import type { Fault, OperationTrace } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import { type Corrected, correctedFor, type Shop } from './measured.ts'
import { asGoodAsItsSheet, SIZES } from './own-form.ts'
import { bottomWanted } from './stop.ts'
import { stepsAcross, withTool } from './width.ts'

/** What was measured at the stop, pm; null where nobody measured it. */
export type Taken = { readonly bottom: Length; readonly width: Length | null; readonly outside: Length | null }

/** What follows from it. `off`: the zero of the cross-feed stands on a diameter so much larger than it was set for. */
export type Findings = {
  readonly off: Length
  readonly expectedBottom: Length
  readonly expectedWidth: Length | null
  /** How much wider than measured the tool really is; of a round tool, how much larger its radius. */
  readonly wider: Length
}

export type Remaining =
  | {
      readonly ok: true
      readonly findings: Findings
      /** All moves, corrected; what is left to do begins after the stop. */
      readonly operation: Operation
      readonly trace: OperationTrace
      readonly deeper: number
      readonly across: number
    }
  | ({ readonly ok: false } & Trouble)

export type Trouble =
  | { readonly why: 'no-width' }
  /** Measured past what the drawing allows; `by` pm. */
  | { readonly why: 'past'; readonly id: 'bottomDiameter' | 'width'; readonly limit: Length; readonly by: Length }
  /** No reading of the dials saves it. */
  | { readonly why: 'outside'; readonly dimension: WantedDimension; readonly size: number; readonly by: number }
  /** Every size with limits is within them, and the form is not: the size without limits that is furthest from the drawing's. */
  | { readonly why: 'form'; readonly dimension: WantedDimension; readonly size: number; readonly by: number }
  | { readonly why: 'fault'; readonly fault: Fault }

/** Plans what remains from what was measured, and replays it from the measured form. `shop` stands on the outside diameter as measured. */
export const remainingFor = (shop: Shop, taken: Taken): Remaining => {
  const past = pastLimits(shop, taken)
  if (past !== null) return { ok: false, ...past }
  const expectedWidth = widthAt(shop, taken.bottom)
  const wider = taken.width === null || byEye(shop) ? 0 : trueTool(shop, taken.bottom, taken.width)
  if (wider === null) return { ok: false, why: 'no-width' }
  const real: Shop = { ...shop, operation: withTool(shop.operation, wider) }
  const { steps: across, corrected } = stepsAcross(real, taken.bottom, wider)
  const trouble = troubleIn(shop, corrected)
  if (trouble !== null) return { ok: false, ...trouble }
  const findings = { off: taken.bottom - shop.stop.expected, expectedBottom: shop.stop.expected, expectedWidth, wider }
  return {
    ok: true,
    findings,
    operation: corrected.operation,
    trace: corrected.trace,
    deeper: corrected.deeper,
    across,
  }
}

/** Roughed at places met by eye, a width tells nothing of the tool; and the cut is then brought to the lines, however wide the tool is. */
const byEye = ({ operation }: Shop): boolean => operation.moves.some(({ place }) => place !== undefined)

/**
 * How much wider (or, of a round edge, larger in radius) a tool is whose cut measures so at that bottom; null where no such tool cuts it.
 * A flat shows in the width as it is; an arc by its chord, so the replay is asked again with what the last two answers point to.
 */
const trueTool = (shop: Shop, bottom: Length, width: Length): Length | null => {
  const off = (wider: Length): number | null => {
    const there = widthAt({ ...shop, operation: withTool(shop.operation, wider) }, bottom)
    return there === null ? null : there - width
  }
  let [last, lastOff] = [0, off(0)]
  let next = lastOff === null ? 0 : -lastOff
  for (let tries = 0; tries < 30; tries++) {
    if (lastOff === null || !Number.isFinite(next)) return null
    if (Math.abs(lastOff) <= SLACK) return last
    const nextOff = off(next)
    if (nextOff === null || nextOff === lastOff) return null
    const slope = (nextOff - lastOff) / (next - last)
    ;[last, lastOff, next] = [next, nextOff, next - nextOff / slope]
  }
  return null
}

/** A limit met but for a nanometer is met. */
const SLACK: Length = 1000

/** What is cut away cannot be put back: the bottom under its lowest limit, the width over its highest; without limits, past the aim itself. */
const pastLimits = ({ operation }: Shop, { bottom, width }: Taken): Trouble | null => {
  const wanted = bottomWanted(operation)
  const lowest = wanted.limits?.[0] ?? wanted.aim
  if (bottom < lowest - SLACK) return { why: 'past', id: 'bottomDiameter', limit: lowest, by: lowest - bottom }
  const across = operation.dimensions.find(({ id }) => id === 'width')
  const widest = across?.limits?.[1] ?? null
  if (width === null || widest === null || across?.atDiameter !== undefined || width <= widest + SLACK) return null
  return { why: 'past', id: 'width', limit: widest, by: width - widest }
}

const widthAt = (shop: Shop, bottom: Length): Length | null => {
  const { trace } = correctedFor(shop, bottom)
  return trace.at[shop.stop.at]?.find(({ id }) => id === 'width')?.surely ?? null
}

/** What the replay holds against it. Where the drawing gives limits they decide, not half a mark around the middle of them. */
export const troubleIn = (
  shop: Shop,
  { operation, trace, faults }: Pick<Corrected, 'operation' | 'trace' | 'faults'>,
): Trouble | null => {
  const { lathe, progress, operation: drawn } = shop
  const sizes = drawn.dimensions.map((dimension, index) => ({ dimension, size: trace.sizes[index]?.surely ?? null }))
  for (const { dimension, size } of sizes) {
    if (size === null || dimension.limits === null) continue
    const [low, high] = dimension.limits
    const by = Math.max(low - size, size - high)
    if (by > (dimension.id === 'angle' ? 1e-9 : SLACK)) return { why: 'outside', dimension, size, by }
  }
  const limited = new Set<Instrument>(drawn.dimensions.flatMap(({ id, limits }) => (limits === null ? [] : [id])))
  const byLimits =
    limited.has('width') && (['depth', 'bottomDiameter', 'radius'] as const).some((id) => limited.has(id))
  const fault = faults.find(({ kind }) => kind !== 'outside-form' && kind !== 'metal-left')
  if (fault !== undefined) return { why: 'fault', fault }
  if (byLimits || faults.length === 0) return null
  const { gone, left } = offForm(lathe, operation, progress, trace)
  if ((gone === 0 && left === 0) || asGoodAsItsSheet(shop, { operation, trace })) return null
  const off = sizes.flatMap(({ dimension, size }) =>
    size === null || dimension.limits !== null || !SIZES.has(dimension.id)
      ? []
      : [{ dimension, size, by: Math.abs(size - dimension.aim) }],
  )
  const most = off.toSorted((a, b) => b.by - a.by)[0]
  return most === undefined ? { why: 'fault', fault: faults[0]! } : { why: 'form', ...most }
}
