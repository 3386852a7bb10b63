import type { Form, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'
import { depthAt, moved, whereSlope } from './curve.ts'
import { envelope } from './insert.ts'

/** A place of the tool's reference point, pm: z from the free end, d with d = −radius. */
export type Place = { readonly z: Length; readonly d: Length }

/** Everything an edge passes over on straight ways between places. One place alone is the edge standing there. */
export const swept = (edge: Form, ways: readonly (readonly [Place, Place])[], step: number): Form =>
  standsStill(ways)
    ? placed(edge, lower(ways[0]![0], ways[0]![1]), step)
    : envelope(ways.flatMap(([from, to]) => alongWay(edge, from, to, step)))

/** An edge that does not move along the work is its own envelope: by far the most passes are plunges. */
const standsStill = (ways: readonly (readonly [Place, Place])[]): boolean =>
  ways.length === 1 && Math.abs(ways[0]![0].z - ways[0]![1].z) < 1

const lower = (a: Place, b: Place): Place => (a.d > b.d ? a : b)

/**
 * The edge at both ends, and the straight lines traced by its corners and by the points of its arcs where the slope is that of the way:
 * nothing else of an edge of lines and arcs can be outermost.
 */
const alongWay = (edge: Form, from: Place, to: Place, step: number): readonly Piece[] => {
  if (Math.abs(to.z - from.z) < 1) return placed(edge, lower(from, to), step)
  const m = (to.d - from.d) / (to.z - from.z)
  const traces = tracing(edge, m).map(([u, e]) => trace(u, e, from, to, step))
  return [...placed(edge, from, step), ...placed(edge, to, step), ...traces]
}

const placed = (edge: Form, at: Place, step: number): readonly Piece[] =>
  edge.map((piece) => ({
    from: piece.from + at.z,
    to: piece.to + at.z,
    curve: moved(piece.curve, at.z, at.d),
    step,
  }))

const tracing = (edge: Form, m: number): readonly (readonly [Length, Length])[] =>
  edge.flatMap(({ from, to, curve }) => {
    const tangent = curve.kind === 'arc' ? whereSlope(curve, m) : from
    const points = tangent > from && tangent < to ? [from, tangent, to] : [from, to]
    return points.map((u) => [u, depthAt(curve, u)] as const)
  })

const trace = (u: Length, e: Length, from: Place, to: Place, step: number): Piece => {
  const [a, b] = from.z < to.z ? [from, to] : [to, from]
  const line = { kind: 'line', z0: a.z + u, d0: a.d + e, z1: b.z + u, d1: b.d + e } as const
  return { from: line.z0, to: line.z1, curve: line, step }
}
