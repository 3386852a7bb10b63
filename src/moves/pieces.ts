import type { Length } from '../units/length.ts'
import type { Piece } from './form.ts'

/** A straight stretch of an edge or of a wanted form, not yet cut by any step. pm. */
export const linePiece = (z0: Length, d0: Length, z1: Length, d1: Length): Piece => ({
  from: z0,
  to: z1,
  curve: { kind: 'line', z0, d0, z1, d1 },
  step: -1,
})

/** A stretch of a circle about (zc, dc); side 1 = its deep half. pm. */
export const arcPiece = (from: Length, to: Length, zc: Length, dc: Length, r: Length, side: 1 | -1): Piece => ({
  from,
  to,
  curve: { kind: 'arc', zc, dc, r, side },
  step: -1,
})
