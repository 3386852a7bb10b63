import type { Form } from '../moves/form.ts'
import type { EdgePoint, Placing, TouchPlace } from '../moves/placing.ts'
import type { Length } from '../units/length.ts'
import { type Bench, see } from './bench.ts'
import { TOLERANCE } from './form/compare.ts'
import { depthAt, peak } from './form/curve.ts'
import { firstBeyond, SLIVER } from './form/insert.ts'

/** Where the reference point is when the hand has brought a point of the edge to its place. From the free end, pm. */
export const broughtTo = (
  { operation }: Pick<Bench, 'operation'>,
  { point, against }: Placing | TouchPlace,
): Length => {
  const u = pointOn(operation.edge.pieces, point)
  if ('line' in against) return against.line - u
  if ('between' in against) return (against.between[0] + against.between[1]) / 2 - u
  if ('face' in against) return against.face - u
  if ('beside' in against) return against.beside - against.gap - u
  if ('past' in against) return against.past + against.by - u
  return (against.over[0] + against.over[1]) / 2 - u
}

/** Offset of a point of the edge from the reference point, pm. */
const pointOn = (edge: Form, point: EdgePoint): Length => {
  if (point === 'tailstock-corner') return edge[0]!.from
  if (point === 'headstock-corner') return edge.at(-1)!.to
  const [from, to] = deepestStretch(edge)
  if (point === 'tip') return (from + to) / 2
  return point === 'nose-tailstock-corner' ? from : to
}

const deepestStretch = (edge: Form): readonly [Length, Length] => {
  const tops = edge.map(peak)
  const deepest = Math.max(...tops.map(({ d }) => d))
  const places = edge.flatMap(({ from, to, curve }, i) =>
    [from, tops[i]!.z, to].filter((u) => Math.abs(depthAt(curve, u) - deepest) <= TOLERANCE),
  )
  return [Math.min(...places), Math.max(...places)]
}

/** The tool can only be brought to a scribed line, to an edge of the part, or to a face that exists and faces the tool. */
export const checkPlacing = (bench: Bench, { point, against }: Placing, index: number): void => {
  const lines = 'line' in against ? [against.line] : 'between' in against ? against.between : []
  if (lines.some((line) => !scribed(bench, line)))
    see(bench, 'set-up', index, null, 'The tool is brought to a line that was not scribed.')
  if (!('face' in against) && !('beside' in against)) return
  const face = 'face' in against ? against.face : against.beside
  // A side of the tool meets a face that rises beside it; in front of a corner the tool is on the side of the face that has no metal.
  const rises: 1 | -1 = point === 'tailstock-corner' && 'face' in against ? -1 : 1
  if (!faceAt(bench.surely, face, rises))
    see(bench, 'set-up', index, null, 'The tool is brought to a face that is not there.')
}

const scribed = ({ operation, setup }: Bench, line: Length): boolean =>
  operation.lines.some((one) => Math.abs(one - line) <= TOLERANCE) ||
  setup.stock.some(({ from, to }) => Math.abs(from - line) <= TOLERANCE || Math.abs(to - line) <= TOLERANCE)

/** On which side of a place is the part larger: the headstock side (1) or the tailstock side (−1)? Beyond the free end there is no part. */
const faceAt = (part: Form, z: Length, rises: 1 | -1): boolean => {
  const high = depthOf(part, z + rises * 2 * SLIVER)
  const low = depthOf(part, z - rises * 2 * SLIVER)
  return high !== null && (low === null || low - high > TOLERANCE)
}

const depthOf = (part: Form, z: Length): Length | null => {
  const piece = part[firstBeyond(part, z)]
  return piece === undefined || piece.from > z ? null : depthAt(piece.curve, z)
}
