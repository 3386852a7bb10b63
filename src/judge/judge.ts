import type { Lathe } from '../lathe/lathe.ts'
import type { Piece } from '../moves/form.ts'
import type { Instrument, Operation, WantedDimension } from '../moves/operation.ts'
import type { Fault, OperationTrace } from '../moves/trace.ts'
import { differ, TOLERANCE } from '../replay/form/compare.ts'
import { peak } from '../replay/form/curve.ts'
import { measure, takenOf } from '../replay/measure.ts'
import type { Progress } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import { type Beside, besideOf } from './beside.ts'
import { hollowRadius, type Verdict, verdictOf } from './dimension.ts'
import { offForm, placed } from './room.ts'
import { withShallow } from './shallow.ts'

/** One wanted dimension of the finished form: as surely cut and as possibly cut, in pm or degrees. */
export type Judged = {
  readonly id: Instrument
  readonly aim: number
  readonly limits: readonly [number, number] | null
  readonly surely: number | null
  readonly possibly: number | null
  readonly verdict: Verdict
  /** Amount beyond the limit (or from the aim, if there is no limit), pm or degrees; 0 if it holds. */
  readonly by: number
  /** True if it is so only with some backlash, not with all. */
  readonly maybe: boolean
  /** The side of the form, if one side is to blame. */
  readonly side: Side | null
}
export type Side = 'headstock' | 'tailstock'

export type Judgment = {
  readonly proven: boolean
  /** No metal is gone that the drawing wants: what is left can still be cut. */
  readonly saved: boolean
  readonly sizes: readonly Judged[]
  /**
   * The faults of the moves: a form that depends on the backlash, or that misses the aim, is no fault within the
   * limits.
   */
  readonly faults: readonly Fault[]
  /** Metal gone beyond the limits of the drawing, radially, pm; 0 = none. */
  readonly gone: Length
  /** Metal gone from the part beside the feature, a step or a shoulder. */
  readonly beside: readonly Beside[]
  /** Metal left within the limits of the drawing, with some backlash at least, radially, pm; 0 = none. */
  readonly left: Length
  /** Metal is left whatever the backlash is. */
  readonly leftAlways: boolean
}

/**
 * A replayed list of moves compared with the drawing: with its limits if it has any, otherwise with half a mark of each
 * dial.
 */
export function judge(
  lathe: Lathe,
  operation: Operation,
  before: Progress,
  trace: OperationTrace,
  faults: readonly Fault[],
): Judgment {
  const ridge = ridgeOf(operation, trace, faults)
  const { mark, room, wanted, target, allowed, gone, left, leftAlways } = offForm(
    lathe,
    operation,
    before,
    trace,
    ridge,
  )
  // Where no place is at the deepest point of a stepped form, or at its edges, a ridge is there. No other size may differ for it.
  const stepped = { ...room, left: { along: room.left.along + 2 * ridge, deep: room.left.deep + ridge } }
  const ridged = byRidges(operation)
  const dimensions = placed(operation)
  const hollow = hollowRadius(dimensions, mark, stepped)
  const taken = [trace.surely, trace.possibly].map((form) => takenOf(form, before.surely, operation, dimensions))
  const least = leastLegs(target, before, operation, dimensions)
  const plain = dimensions.map((dimension, i): Judged => {
    const [surely, possibly] = [taken[0]![i]!, taken[1]![i]!]
    const own = ridged.has(dimension.id) ? stepped : room
    const follows = dimension.id === 'radius' ? hollow : null
    const verdict = verdictOf(dimension, [surely, possibly], mark, own, least[i], follows)
    const side = sideOf(dimension, verdict, operation, before, wanted, trace)
    return { ...dimension, limits: dimension.limits, surely, possibly, ...verdict, side }
  })
  const sizes =
    left > 0 ? withShallow(plain, wanted, operation, trace, { room: room.left, by: left }, !leftAlways) : plain
  const beside = besideOf(operation, before, trace, allowed)
  const inside = sizes.every(({ verdict }) => verdict === 'holds') && gone === 0 && left === 0
  const counted = (inside ? faults.filter((fault) => !aboutForm(fault)) : faults).map((fault) => traced(fault, trace))
  return {
    proven: inside && counted.length === 0,
    saved: gone === 0 && sizes.every(({ verdict }) => verdict !== 'gone'),
    sizes,
    faults: counted.toSorted((a, b) => place(a) - place(b)),
    gone,
    beside,
    left,
    leftAlways,
  }
}

/** The sizes that a ridge makes smaller, and a fillet that it makes larger: those that end at an arc. */
const byRidges = ({ wanted }: Operation): ReadonlySet<Instrument> => {
  const isArc = (piece: Piece | undefined) => piece?.curve.kind === 'arc'
  const deepest = Math.max(...wanted.map((piece) => peak(piece).d))
  const toArc = wanted.every((piece) => isArc(piece) || peak(piece).d < deepest - TOLERANCE)
  return new Set<Instrument>([
    'cornerRadius',
    ...(isArc(wanted[0]) || isArc(wanted.at(-1)) ? (['width'] as const) : []),
    ...(toArc ? (['depth', 'bottomDiameter'] as const) : []),
  ])
}

/** What the job allows; where the marks cannot keep that, what the replay has found to be the least that they leave. */
const ridgeOf = ({ cusp }: Operation, { ridges = [] }: OperationTrace, faults: readonly Fault[]): Length => {
  if (cusp === undefined) return 0
  return faults.some(({ kind }) => kind === 'ridge') ? cusp.most : Math.max(cusp.most, ...ridges)
}

/**
 * A corner's arc leaves both surfaces so flatly that half a mark moves its ends by many times that. So a leg without limits may be as short as that of
 * the form on which as much metal is left as may be; how long it may be the form says, which is held against all that may be cut. Null for other sizes.
 */
const leastLegs = (
  target: Progress['surely'],
  before: Progress,
  operation: Operation,
  dimensions: readonly WantedDimension[],
): readonly (number | null)[] => {
  const isLeg = ({ id, limits }: WantedDimension) => (id === 'legAlong' || id === 'legDown') && limits === null
  if (!dimensions.some(isLeg)) return dimensions.map(() => null)
  // Moved along by its room the form begins before the face; the leg down is taken at the face.
  const { from } = operation.region
  const inside = target.flatMap((piece) => (piece.to > from ? [{ ...piece, from: Math.max(piece.from, from) }] : []))
  const taken = takenOf(inside, before.surely, operation, dimensions)
  return dimensions.map((one, i) => (isLeg(one) ? taken[i]! : null))
}

/**
 * A form that depends on the backlash is found at the end, but one cut caused it: the one that left metal with only
 * some backlash.
 */
function traced(fault: Fault, { surely, possibly }: OperationTrace): Fault {
  if (fault.kind !== 'open-form' || fault.move >= 0) return fault
  const at = differ(surely, possibly)?.z
  const piece =
    at === undefined ? undefined : possibly.findLast(({ from, to, step }) => from <= at && at <= to && step >= 0)
  return piece === undefined ? fault : { ...fault, move: piece.step }
}

const place = ({ move }: Fault): number => (move < 0 ? Number.MAX_SAFE_INTEGER : move)

/**
 * Faults found on the form alone: within the limits of the drawing they do not count against moves that are not the
 * planner's.
 */
const aboutForm = ({ kind, move }: Fault): boolean =>
  kind === 'outside-form' || kind === 'metal-left' || (kind === 'open-form' && move < 0)

/** The wall that is further from its place is to blame for a width. */
function sideOf(
  { id }: WantedDimension,
  { verdict }: { readonly verdict: Verdict },
  operation: Operation,
  before: Progress,
  wanted: Progress['surely'],
  trace: OperationTrace,
): Side | null {
  if (id !== 'width' || verdict === 'holds') return null
  const form = verdict === 'gone' ? trace.possibly : trace.surely
  const off = (edge: 'near' | 'far'): number | null => {
    const dimension = { id: edge, aim: 0, limits: null } as const
    const is = measure(form, before.surely, operation, dimension)
    const should = measure(wanted, before.surely, operation, dimension)
    return is === null || should === null ? null : Math.abs(is - should)
  }
  const [near, far] = [off('near'), off('far')]
  if (near === null || far === null || Math.abs(near - far) <= TOLERANCE) return null
  return far > near ? 'headstock' : 'tailstock'
}
