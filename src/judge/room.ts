import type { Lathe } from '../lathe/lathe.ts'
import type { Form, Piece } from '../moves/form.ts'
import type { Instrument, Operation, WantedDimension } from '../moves/operation.ts'
import { marksBox } from '../replay/bench.ts'
import { excess, TOLERANCE } from '../replay/form/compare.ts'
import { depthAt } from '../replay/form/curve.ts'
import { type Box, grown, reaching, shrunk } from '../replay/form/dilate.ts'
import { cutInto } from '../replay/form/insert.ts'
import type { Progress } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'

/**
 * How far the finished form may be outside and inside the wanted one, and the tolerance of the edge that the drawing
 * places, pm. `runs`: how far an edge moves along the work per depth.
 */
export type Room = { readonly over: Over; readonly left: Box; readonly edge: Length; readonly runs: number }
/**
 * Outside, each wall has its own room: the wall that the drawing places has the room of its own limits, the other wall
 * that of the width.
 */
type Over = Box & { readonly near: Length; readonly far: Length }

/** Half a mark, or what the limits give. */
const roomOf = (operation: Operation, mark: Box): Room => {
  const dimensions = placed(operation)
  const over = slackOf(dimensions, 'over', mark)
  const left = slackOf(dimensions, 'left', mark)
  const wide = slackOf(dimensions, 'over', { along: 0, deep: 0 }).along
  const edges = dimensions.filter(({ id }) => PLACES.has(id))
  const [toNear, toFar] = [0, 1].map((end) => edges.reduce((most, one) => Math.max(most, beyond(one, end)), mark.along))
  // The wall that the drawing places takes nothing from the width; from a middle each takes half.
  const share = SHARES[(edges.find(({ limits }) => limits !== null) ?? edges[0])?.id ?? 'none'] ?? [1, 1]
  const runs = Math.max(...runOut(operation))
  return {
    over: { ...over, near: toNear! + share[0] * wide, far: toFar! + share[1] * wide },
    left: { ...left, along: Math.max(left.along, edges.length === 0 ? 0 : Math.min(toNear!, toFar!)) },
    edge: mark.along + over.deep * runs,
    runs,
  }
}

const SHARES: Partial<Record<string, readonly [near: number, far: number]>> = {
  near: [0, 1],
  far: [1, 0],
  center: [1 / 2, 1 / 2],
}

/**
 * Metal gone beyond the room that the drawing gives, and metal left within it, radially, pm; 0 = none. `ridge`: how far what stays between two places of
 * a stepped form may stand out of it.
 */
export const offForm = (
  lathe: Lathe,
  operation: Operation,
  before: Progress,
  { surely, possibly }: { readonly surely: Form; readonly possibly: Form },
  ridge: Length = operation.cusp?.most ?? 0,
) => {
  const mark = marksBox(lathe, operation)
  const room = roomOf(operation, mark)
  const wanted = [...before.surely]
  cutInto(wanted, operation.wanted)
  const least = [...before.surely]
  cutInto(least, operation.atLeast ?? operation.wanted)
  const target = targetOf(least, room.left, ridge)
  const allowed = allowedBy(operation, before, mark, room)
  return {
    mark,
    room,
    wanted,
    target,
    allowed,
    gone: deeperBy(possibly, allowed),
    left: deeperBy(target, surely),
    leftAlways: deeperBy(target, possibly) > 0,
  }
}

/**
 * The form that must surely be cut. A ridge may stay on an arc alone, and where the arc is steep it stands out of it along the work: a straight
 * wall and a straight floor beside it have the room of the limits, no more.
 */
const targetOf = (least: Form, room: Box, ridge: Length): Form => {
  const target = [...shrunk(least, { along: room.along + ridge, deep: room.deep + ridge })]
  if (ridge > 0) cutInto(target, shrunk(least.map(withoutArc), room))
  return target
}

const withoutArc = (piece: Piece): Piece => {
  const { from, to, curve } = piece
  if (curve.kind === 'line') return piece
  const d = Math.min(depthAt(curve, from), depthAt(curve, to))
  return { ...piece, curve: { kind: 'line', z0: from, d0: d, z1: to, d1: d } }
}

/** The greatest depth of one form below another, pm; 0 if the difference is only rounding error. */
const deeperBy = (a: Form, b: Form): Length => {
  const by = excess(a, b)?.by ?? 0
  return by <= TOLERANCE ? 0 : by
}

/**
 * The dimensions that are checked: of the place along the work, the edge that the drawing gives, or the middle; the
 * others follow from it and the width.
 */
export const placed = ({ dimensions }: Operation): readonly WantedDimension[] =>
  dimensions.flatMap((one): readonly WantedDimension[] => {
    if (one.id !== 'near' || one.drawn === undefined) return [one]
    const { id, aim } = one.drawn
    return dimensions.some((other) => other.id === id) ? [] : [{ id, aim, limits: null }]
  })

/**
 * The part cut as deep as allowed: the wanted form of this operation with its room, and everything else as it was,
 * within half a mark. A step or a shoulder beside the feature has none of the room that the limits of the feature give.
 */
const allowedBy = (operation: Operation, before: Progress, mark: Box, { over }: Room): Form => {
  const part = [...grown(before.possibly, mark)]
  const [near, far] = runOut(operation)
  cutInto(
    part,
    reaching(operation.wanted, {
      from: over.near + near! * over.deep,
      to: over.far + far! * over.deep,
      deep: over.deep,
    }),
  )
  return part
}

const PLACES: ReadonlySet<Instrument> = new Set<Instrument>(['near', 'far', 'center'])
const ALONG: ReadonlySet<Instrument> = new Set<Instrument>(['width', 'root', 'legAlong', 'radius'])
const DEEP: ReadonlySet<Instrument> = new Set<Instrument>(['depth', 'bottomDiameter', 'legDown', 'radius'])

const beyond = ({ aim, limits }: WantedDimension, end: number): Length =>
  limits === null ? 0 : Math.abs(limits[end]! - aim)

const slackOf = (dimensions: readonly WantedDimension[], way: 'over' | 'left', least: Box): Box => {
  const given = (set: ReadonlySet<Instrument>, from: Length): Length =>
    dimensions.reduce((most, { id, aim, limits }) => {
      if (limits === null || !set.has(id)) return most
      const upper = (id === 'bottomDiameter') === (way === 'left')
      const slack = upper ? limits[1] - aim : aim - limits[0]
      return Math.max(most, id === 'bottomDiameter' ? slack / 2 : slack)
    }, from)
  return { along: given(ALONG, least.along), deep: given(DEEP, least.deep) }
}

/** A flank flatter than this is treated as this steep: 1 in 10. */
const FLATTEST = 0.1

/** How far along the work each edge of the form moves per depth: not at all at a wall, more the flatter the edge. */
const runOut = ({ wanted, surface }: Operation): readonly [near: number, far: number] => {
  const end = (piece: Piece | undefined, at: 'from' | 'to'): number => {
    if (piece === undefined) return 0
    const { from, to, curve } = piece
    const [edge, inner] = at === 'from' ? [from, from + (to - from) / 1000] : [to, to - (to - from) / 1000]
    const rise = depthAt(curve, inner) - depthAt(curve, edge)
    if (rise <= 0 || depthAt(curve, edge) + surface / 2 > (to - from) / 10) return 0
    return Math.min(Math.abs(inner - edge) / rise, 1 / FLATTEST)
  }
  return [end(wanted[0], 'from'), end(wanted.at(-1), 'to')]
}
