import { instrumentsOf } from '../lathe/instruments.ts'
import type { Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { type Length, MM } from '../units/length.ts'
import { correctedFor, type Shop } from './measured.ts'
import { type Choice, firstProved } from './nearby.ts'
import { acrossOnPaper, deeperOnPaper, NO_PAPER, type Paper } from './paper.ts'
import { bottomWanted } from './stop.ts'
import type { Trouble } from './trouble.ts'
import { stepsAcross, withTool } from './width.ts'

/** What was measured at the stop, pm; null if it was not measured. */
export type Taken = {
  readonly bottom: Length
  readonly width: Length | null
  readonly outside: Length | null
  /** The bottom was measured once more, and measured the same. */
  readonly again?: boolean
}

/** What follows from it. `off`: the zero of the cross-feed is at a diameter larger by this much than it was set for. */
export type Findings = {
  readonly off: Length
  readonly expectedBottom: Length
  readonly expectedWidth: Length | null
  /** How much wider the tool really is than stated; for a round tool, how much larger its radius is. */
  readonly wider: Length
}

export type Remaining =
  | {
      readonly ok: true
      readonly findings: Findings
      /** All moves, corrected. Those after the stop are still to do. */
      readonly operation: Operation
      readonly trace: OperationTrace
      readonly deeper: number
      readonly across: number
    }
  | ({ readonly ok: false } & Trouble)

/** Plans what remains from what was measured, and replays it from the measured form. `shop` has the outside diameter as measured. */
export const remainingFor = (shop: Shop, taken: Taken, paper: Paper = NO_PAPER): Remaining => {
  const past = pastLimits(shop, taken)
  if (past !== null) return { ok: false, ...past }
  const expectedWidth = widthAt(shop, taken.bottom)
  const silent = taken.width === null || byEye(shop) || asKeen(shop, taken.width, expectedWidth)
  const wider = silent ? 0 : trueTool(shop, taken.bottom, taken.width!)
  if (wider === null) return { ok: false, why: 'no-width' }
  const real: Shop = { ...shop, operation: withTool(shop.operation, wider) }
  const { across, deeper, corrected, trouble } = firstProved(
    shop,
    real,
    taken.bottom,
    choicesFor(real, taken, wider, paper),
  )
  if (trouble !== null) return { ok: false, ...trouble }
  const findings = { off: taken.bottom - shop.stop.expected, expectedBottom: shop.stop.expected, expectedWidth, wider }
  return {
    ok: true,
    findings,
    operation: corrected.operation,
    trace: corrected.trace,
    deeper,
    across,
  }
}

/** The readings that the table on the sheet gives, and those that come nearest to the drawing. */
const choicesFor = (real: Shop, { bottom, width }: Taken, wider: Length, paper: Paper) => {
  const { steps, corrected } = stepsAcross(real, bottom, wider)
  const own: Choice = { deeper: corrected.deeper, across: steps }
  const across = width === null ? 0 : acrossOnPaper(paper, real.operation, width)
  const deeper = deeperOnPaper(paper, bottom)
  const told =
    deeper === null && across === null ? null : { deeper: deeper ?? own.deeper, across: across ?? own.across }
  return { told, own }
}

/**
 * A keen point has no width that could be another one: what the width of its V is off, up to three times what a caliper may be off, is the angle and the caliper.
 * Common practice, no source.
 */
const asKeen = ({ lathe, operation }: Shop, width: Length, expected: Length | null): boolean => {
  const keen = operation.edge.pieces.every(({ curve }) => curve.kind === 'line' && curve.d0 !== curve.d1)
  const caliper = instrumentsOf(lathe).caliper ?? MM / 20
  return keen && expected !== null && Math.abs(width - expected) <= 3 * caliper
}

/** After roughing at places found by eye, a width says nothing about the tool. The cut is then brought to the lines, however wide the tool is. */
const byEye = ({ operation }: Shop): boolean => operation.moves.some(({ place }) => place !== undefined)

/**
 * How much wider (for a round edge, larger in radius) a tool must be to cut this width at that bottom; null if no tool does. A flat changes the width by
 * the same amount. An arc changes it through its chord, so the replay is repeated with the value that the last two results point to.
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

/** A limit missed by a nanometer is met. */
const SLACK: Length = 1000

/** Metal that is cut away cannot be put back: the bottom is below its lowest limit, or the width above its highest. Without limits: past the aim. */
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
