import type { Curve, Edge, Form, Piece } from '../moves/form.ts'
import type { Length } from '../units/length.ts'

/**
 * The real edge if it was measured wrong by this much. The reference point stays. A flat is wider, and what comes after it moves with it; an arc has
 * another radius.
 */
export const worn = (edge: Edge, by: Length): Edge => {
  const flat = edge.pieces.findIndex(isFlat)
  if (flat < 0 && edge.ground !== undefined)
    return edge.ground === null ? edge : { ...edge, pieces: scaled(edge.pieces, 1 + by / edge.ground) }
  const pieces = flat < 0 ? edge.pieces.map((piece) => otherRadius(piece, by)) : widened(edge.pieces, flat, by)
  return { ...edge, pieces }
}

/** A form ground to another radius on a sloping face: the same form scaled from its reference point, apart from the curvature of the work. */
const scaled = (pieces: Form, by: number): Form =>
  pieces.map((piece) => ({ ...piece, from: piece.from * by, to: piece.to * by, curve: curveScaled(piece.curve, by) }))

const curveScaled = (curve: Curve, by: number): Curve =>
  curve.kind === 'arc'
    ? { ...curve, zc: curve.zc * by, dc: curve.dc * by, r: curve.r * by }
    : { kind: 'line', z0: curve.z0 * by, d0: curve.d0 * by, z1: curve.z1 * by, d1: curve.d1 * by }

const isFlat = ({ curve }: Piece): boolean => curve.kind === 'line' && curve.d0 === 0 && curve.d1 === 0

const widened = (pieces: Form, flat: number, by: Length): Form =>
  pieces.map((piece, index) => {
    if (index < flat) return piece
    if (index > flat) return { ...piece, from: piece.from + by, to: piece.to + by, curve: along(piece.curve, by) }
    return { ...piece, to: piece.to + by, curve: flatTo(piece.from, piece.to + by) }
  })

const flatTo = (from: Length, to: Length): Curve => ({ kind: 'line', z0: from, d0: 0, z1: to, d1: 0 })

const along = (curve: Curve, by: Length): Curve =>
  curve.kind === 'arc' ? { ...curve, zc: curve.zc + by } : { ...curve, z0: curve.z0 + by, z1: curve.z1 + by }

/**
 * A convex end keeps its tip at e = 0, with the center one radius behind it. A concave quarter keeps its virtual corner, with the center one radius
 * from both of its ends.
 */
const otherRadius = (piece: Piece, by: Length): Piece => {
  const { curve } = piece
  if (curve.kind === 'line') return piece
  const r = curve.r + by
  if (curve.side === -1) {
    const scale = r / curve.r
    return {
      ...piece,
      from: piece.from * scale,
      to: piece.to * scale,
      curve: { ...curve, r, zc: curve.zc * scale, dc: curve.dc * scale },
    }
  }
  const end = (u: Length): Length => (Math.abs(u - curve.zc) >= curve.r - 1 ? u + Math.sign(u - curve.zc) * by : u)
  return { ...piece, from: end(piece.from), to: end(piece.to), curve: { ...curve, r, dc: curve.dc - by } }
}
