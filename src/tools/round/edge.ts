import type { Form } from '../../moves/form.ts'
import { arcPiece } from '../../moves/pieces.ts'
import type { Length } from '../../units/length.ts'
import { mirrored, quarter, type Stance } from '../raked.ts'

/**
 * Edge of a round tool: e(u) = −(r − √(r² − u²)) over half the edge's width each side of the tip, which is the
 * reference. pm.
 */
export function roundEdge(radius: Length, edgeWidth: Length | null): Form {
  const half = roundHalfWidth(radius, edgeWidth)
  return [arcPiece(-half, half, 0, -radius, radius, 1)]
}

/** Half of the width over which a round edge is ground, pm. */
export const roundHalfWidth = (radius: Length, edgeWidth: Length | null): Length =>
  edgeWidth === null ? radius : Math.min(radius, edgeWidth / 2)

/** A circle of `radius` on the face, over `half` to each side of the tip. */
export function rakedRound(radius: Length, half: Length, stance: Stance): Form {
  const side = quarter(radius, half, stance)
  return [...mirrored(side), ...side]
}
