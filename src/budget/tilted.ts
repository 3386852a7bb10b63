import type { Curve, Edge, Piece } from '../moves/form.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

/**
 * The edge of a V whose real included angle is larger than measured by this many degrees, with the same nose, which begins at the reference point.
 * Every point of a flank is further from the nose in the same ratio.
 */
export const tilted = (edge: Edge, by: Degrees): Edge => {
  const end = noseEnd(edge)
  const first = edge.pieces[0]!
  const half = Math.atan2(-first.from, -depthOf(first.curve, first.from))
  const ratio = Math.tan(half + (by * Math.PI) / 360) / Math.tan(half)
  const wider = (u: Length): Length => (u < 0 ? u * ratio : u > end ? end + (u - end) * ratio : u)
  return { ...edge, pieces: edge.pieces.map((piece) => stretched(piece, wider)) }
}

/** Up to where the edge is deepest, at e = 0. */
const noseEnd = ({ pieces }: Edge): Length =>
  Math.max(0, ...pieces.filter(({ to, curve }) => Math.abs(depthOf(curve, to)) < 1).map(({ to }) => to))

/** A curved flank moves with its two ends and keeps its radius. */
const stretched = ({ from, to, curve, step }: Piece, wider: (u: Length) => Length): Piece => {
  const [a, b] = [wider(from), wider(to)]
  const [da, db] = [depthOf(curve, from), depthOf(curve, to)]
  return {
    from: a,
    to: b,
    curve: curve.kind === 'line' ? lineThrough(a, da, b, db) : arcThrough(curve, a, da, b, db),
    step,
  }
}

const lineThrough = (z0: Length, d0: Length, z1: Length, d1: Length): Curve => ({ kind: 'line', z0, d0, z1, d1 })

const arcThrough = (curve: Extract<Curve, { kind: 'arc' }>, a: Length, da: Length, b: Length, db: Length): Curve => {
  const [dz, dd] = [b - a, db - da]
  const chord = Math.hypot(dz, dd)
  const back = Math.sqrt(Math.max(0, curve.r ** 2 - chord ** 2 / 4))
  // The center of the deep half of a circle is above the chord, of the shallow half below it.
  const away = (curve.side * back) / chord
  return { ...curve, zc: (a + b) / 2 + dd * away, dc: (da + db) / 2 - dz * away }
}

const depthOf = (curve: Curve, u: Length): Length => {
  if (curve.kind === 'arc') {
    const square = curve.r ** 2 - (u - curve.zc) ** 2
    return curve.dc + curve.side * Math.sqrt(Math.max(0, square))
  }
  return curve.z1 === curve.z0
    ? Math.max(curve.d0, curve.d1)
    : curve.d0 + ((curve.d1 - curve.d0) * (u - curve.z0)) / (curve.z1 - curve.z0)
}
