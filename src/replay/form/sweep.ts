import type { Form, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'
import { depthAt, moved, whereSlope } from './curve.ts'
import { envelope } from './insert.ts'

/** A place of the tool's reference point, pm: z from the free end, d with d = −radius. */
export type Place = { readonly z: Length; readonly d: Length }

/** Everything an edge passes over on straight paths between places. For a single place: the edge at that place. */
export const swept = (edge: Form, ways: readonly (readonly [Place, Place])[], step: number): Form => {
  const passed: Piece[] = []
  // An edge that does not move along the work is its own envelope. Most passes are plunges.
  if (ways.length === 1 && standsStill(ways[0]![0], ways[0]![1])) {
    place(passed, edge, lower(ways[0]![0], ways[0]![1]), step)
    return passed
  }
  for (const [from, to] of ways) alongWay(passed, edge, from, to, step)
  return envelope(passed)
}

const standsStill = (from: Place, to: Place): boolean => Math.abs(from.z - to.z) < 1

const lower = (a: Place, b: Place): Place => (a.d > b.d ? a : b)

/**
 * The edge at both ends of the path, and the straight lines traced by its corners and by the points of its arcs that have the slope of the path:
 * nothing else of an edge of lines and arcs can be outermost.
 */
const alongWay = (passed: Piece[], edge: Form, from: Place, to: Place, step: number): void => {
  if (standsStill(from, to)) {
    place(passed, edge, lower(from, to), step)
    return
  }
  place(passed, edge, from, step)
  place(passed, edge, to, step)
  const m = (to.d - from.d) / (to.z - from.z)
  const [a, b] = from.z < to.z ? [from, to] : [to, from]
  for (const { from: first, to: last, curve } of edge) {
    passed.push(trace(first, depthAt(curve, first), a, b, step))
    const tangent = curve.kind === 'arc' ? whereSlope(curve, m) : first
    if (tangent > first && tangent < last) passed.push(trace(tangent, depthAt(curve, tangent), a, b, step))
    passed.push(trace(last, depthAt(curve, last), a, b, step))
  }
}

const place = (passed: Piece[], edge: Form, { z, d }: Place, step: number): void => {
  for (const { from, to, curve } of edge) passed.push({ from: from + z, to: to + z, curve: moved(curve, z, d), step })
}

const trace = (u: Length, e: Length, a: Place, b: Place, step: number): Piece => ({
  from: a.z + u,
  to: b.z + u,
  curve: { kind: 'line', z0: a.z + u, d0: a.d + e, z1: b.z + u, d1: b.d + e },
  step,
})
