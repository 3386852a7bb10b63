import type { Arc, Form, Piece } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import { depthAt, equalSlopes } from './form/curve.ts'
import { SLIVER } from './form/insert.ts'

/** The most metal that stands out of each arc of a wanted form, square to it, in their order; at least 0, pm. d = −radius. */
export const ridgesOf = (wanted: Form, cut: Form): readonly Length[] =>
  wanted.flatMap((piece) => (piece.curve.kind === 'arc' ? [onArc(piece, piece.curve, cut)] : []))

const onArc = (piece: Piece, arc: Arc, cut: Form): Length => {
  let most = 0
  for (const one of cut) {
    const from = Math.max(one.from, piece.from)
    const to = Math.min(one.to, piece.to)
    if (to - from <= SLIVER) continue
    // Measured square to an arc, a piece is highest at its ends, or where it runs parallel to the arc.
    for (const z of [from, to, ...equalSlopes(one.curve, arc).filter((z) => z > from && z < to)])
      most = Math.max(most, standsOut(arc, z, depthAt(one.curve, z)))
  }
  return most
}

/** Above the center of a hollow the form continues as a wall, one radius away. */
const standsOut = ({ zc, dc, r, side }: Arc, z: Length, d: Length): Length => {
  if (side === 1 && d < dc) return r - Math.abs(z - zc)
  return (r - Math.hypot(z - zc, d - dc)) * side
}
