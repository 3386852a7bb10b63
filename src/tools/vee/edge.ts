import type { Form } from '../../moves/form.ts'
import { linePiece } from '../../moves/pieces.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import { at, fitted, mirrored, moved, type Stance } from '../raked.ts'

/**
 * Edge of a V tool: a flat nose, behind it flanks at half the included angle up to the reach. Reference: the
 * tailstock-side corner of the flat. pm.
 */
export function veeEdge(nose: Length, angle: Degrees, reach: Length): Form {
  const run = reach * Math.tan((angle / 2) * (Math.PI / 180))
  const flanks = [linePiece(-run, -reach, 0, 0), linePiece(nose, 0, nose + run, -reach)] as const
  return nose > 0 ? [flanks[0], linePiece(0, 0, nose, 0), flanks[1]] : [...flanks]
}

/** Flanks straight on the face at `half` to each side, up to where they are `reach` above the nose. */
export function rakedVee(nose: Length, half: Degrees, faceReach: Length, stance: Stance): Form {
  const t = Math.tan(half * (Math.PI / 180))
  const flank = fitted((part) => at(part * faceReach * t, part * faceReach, stance), [null, null])
  const far = flank.map((piece) => moved(piece, nose))
  return [...mirrored(flank), ...(nose > 0 ? [linePiece(0, 0, nose, 0)] : []), ...far]
}
