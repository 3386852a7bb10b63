import type { Form } from '../../moves/form.ts'
import { arcPiece } from '../../moves/pieces.ts'
import type { Length } from '../../units/length.ts'
import { depthAt } from '../grind/form.ts'
import { at, fitted, type Point, type Stance } from '../raked.ts'

/**
 * Edge of a corner tool, a hollow quarter circle: e(u) = r − √(r² − (r − u)²), from r deep at the face to 0 at the
 * cylinder. Reference: the virtual sharp corner. pm.
 */
export const cornerEdge = (radius: Length): Form => [arcPiece(0, radius, radius, radius, radius, -1)]

/**
 * A hollow quarter of `radius`, stretched to `leg` back on the face: its deep tip is the tip of the face, the outer tip
 * is at e = 0.
 */
export function rakedCorner(radius: Length, leg: Length, stance: Stance): Form {
  const down = depthAt(leg, stance.floor, stance.rake)
  const hollow = (part: number): Point => {
    const turn = (part * Math.PI) / 2
    const { u, e } = at(2 * radius * Math.sin(turn / 2) ** 2, leg * Math.sin(turn), stance)
    return { u, e: down + e }
  }
  return fitted(hollow, ['upright', 'level'])
}
