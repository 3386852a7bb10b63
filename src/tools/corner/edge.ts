import type { Form } from '../../moves/form.ts'
import { arcPiece } from '../../moves/pieces.ts'
import type { Length } from '../../units/length.ts'

/** Edge of a corner tool, a hollow quarter circle: e(u) = r − √(r² − (r − u)²), from r deep at the face to 0 at the cylinder. Reference: the virtual sharp corner. pm. */
export const cornerEdge = (radius: Length): Form => [arcPiece(0, radius, radius, radius, radius, -1)]
