import { stepTravel } from '../dials/travel.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Piece } from '../moves/form.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Fault, OperationTrace } from '../moves/trace.ts'
import { type Progress, replayNext } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import type { Reads } from './reads.ts'
import { sinceTheStop } from './since-stop.ts'
import { bottomWanted, type Stop } from './stop.ts'

/** One operation on one lathe, on the part as the operations before it have left it. */
export type Shop = {
  readonly lathe: Lathe
  readonly setup: Setup
  readonly progress: Progress
  readonly operation: Operation
  readonly stop: Stop
  /** What is read of each size at the stop. */
  readonly reads?: Reads
  /** Many plans are tried, and only the result after the stop is needed: not where the slides went. */
  readonly many?: true
}

/** A plan from a measured bottom: the same moves, with the zero where the measurement says it is, finished at other readings. */
export type Corrected = {
  /** Readable steps that every finish goes deeper than planned; negative = less deep. */
  readonly deeper: number
  readonly operation: Operation
  readonly trace: OperationTrace
  /** Faults of the moves after the stop, and of the finished form. */
  readonly faults: readonly Fault[]
  /** The finished bottom, pm of diameter. */
  readonly bottom: Length
  /** Within the limits of the drawing; null if it gives none. */
  readonly within: boolean | null
}

/** A limit missed by a nanometer is met. */
const SLACK: Length = 1000

/**
 * The reading that comes nearest to the drawing's bottom, for a measured bottom. Every reading was approached forward. So only the zero can explain
 * why the bottom is not as expected: it is off by half the difference of the diameters. Of two equally near readings the one that leaves metal.
 */
export const correctedFor = (shop: Shop, measured: Length): Corrected => {
  const off = measured - shop.stop.expected
  const step = finishStep(shop)
  const { aim } = bottomWanted(shop.operation)
  const nearest = Math.ceil(off / 2 / step - 0.5 - 1e-6)
  let found = finishedAt(shop, off, nearest === 0 ? 0 : nearest)
  // The planned reading was rounded too, so the next one may be nearer. One step of the dial is two steps on the diameter.
  while (found.bottom - aim > step + SLACK) {
    const next = finishedAt(shop, off, found.deeper + 1)
    if (next.bottom >= found.bottom) break
    found = next
  }
  while (aim - found.bottom >= step - SLACK) {
    const next = finishedAt(shop, off, found.deeper - 1)
    if (next.bottom <= found.bottom) break
    found = next
  }
  return found
}

/** The finish made `deeper` readable steps deeper than written, where the bottom is larger than expected by `off`, pm of diameter. */
export const finishedAt = (shop: Shop, off: Length, deeper: number): Corrected => {
  const { lathe, setup, progress, operation, stop } = shop
  // A tool that measures wider has been to a wall already: that is metal gone, not a wrong plan.
  const { walls: _, ...planned } = standingAlong(shop, off)
  const changed: Operation = {
    ...planned,
    off: { along: operation.off?.along ?? 0, deep: (operation.off?.deep ?? 0) - off / 2 },
    ...(off === 0 ? {} : { zeroMeasured: true }),
    moves: operation.moves.map((move, index) =>
      stop.finishes.includes(index) ? { ...move, count: move.count! + deeper } : move,
    ),
  }
  const { trace, faults } =
    (shop.many === true ? sinceTheStop(shop, changed, off) : null) ?? replayNext(lathe, setup, progress, changed, 0)
  const { limits } = bottomWanted(operation)
  const bottom = trace.sizes.find(({ id }) => id === 'bottomDiameter')!.surely!
  return {
    deeper,
    operation: changed,
    trace,
    faults: faults.filter(({ move }) => move < 0 || move > stop.at),
    bottom,
    within: limits === null ? null : bottom >= limits[0] - SLACK && bottom <= limits[1] + SLACK,
  }
}

/** Depth of one readable step of the finishing slide, pm. Of the compound only the part of it that goes into the work. */
export const finishStep = ({ lathe, operation, stop }: Shop): Length =>
  stop.by === 'cross-feed'
    ? stepTravel(lathe.crossFeed)
    : stepTravel(lathe.compound.scale) * Math.sin((operation.angle * Math.PI) / 180)

/**
 * A compound that feeds down a flank corrects a wrong zero by going further or less far down the same line. The form keeps its size and moves a little
 * along the work, by less than the layout error.
 */
export const standingAlong = ({ operation, stop }: Pick<Shop, 'operation' | 'stop'>, off: Length): Operation => {
  if (stop.by === 'cross-feed') return operation
  const by = off / 2 / Math.tan((operation.angle * Math.PI) / 180)
  const { wanted, atLeast, region } = operation
  return {
    ...operation,
    wanted: wanted.map((piece) => movedAlong(piece, by)),
    ...(atLeast === undefined ? {} : { atLeast: atLeast.map((piece) => movedAlong(piece, by)) }),
    region: { from: region.from + by, to: region.to + by },
  }
}

const movedAlong = ({ from, to, curve, step }: Piece, by: Length): Piece => ({
  from: from + by,
  to: to + by,
  curve: curve.kind === 'line' ? { ...curve, z0: curve.z0 + by, z1: curve.z1 + by } : { ...curve, zc: curve.zc + by },
  step,
})
