import type { Form } from '../../moves/form.ts'
import { arcPiece, linePiece } from '../../moves/pieces.ts'
import type { Length } from '../../units/length.ts'
import { mirrored, moved, quarter, type Stance } from '../raked.ts'

/**
 * Edge of a square tool: flat over its width, corners rounded where it has a corner radius. Reference: the
 * tailstock-side corner. pm.
 */
export function squareEdge(width: Length, cornerRadius: Length): Form {
  if (cornerRadius <= 0) return [linePiece(0, 0, width, 0)]
  const corner = cornerRadius
  return [
    arcPiece(0, corner, corner, -corner, corner, 1),
    linePiece(corner, 0, width - corner, 0),
    arcPiece(width - corner, width, width - corner, -corner, corner, 1),
  ]
}

/** Flat, its corners rounded to `corner` on the face. */
export function rakedSquare(width: Length, corner: Length, stance: Stance): Form {
  const side = quarter(corner, corner, stance)
  const near = mirrored(side).map((piece) => moved(piece, corner))
  return [...near, linePiece(corner, 0, width - corner, 0), ...side.map((piece) => moved(piece, width - corner))]
}
