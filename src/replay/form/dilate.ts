import type { Form, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'
import { mirrored } from './curve.ts'
import { swept } from './sweep.ts'

/** A box: `along` to both sides along the work, `deep` in depth, pm. */
export type Box = { readonly along: Length; readonly deep: Length }

/** The deepest form if every point may be off by the box: moved both ways along the work, and deeper. */
export const grown = (form: Form, box: Box): Form =>
  swept(
    form,
    [
      [
        { z: -box.along, d: box.deep },
        { z: box.along, d: box.deep },
      ],
    ],
    -1,
  )

/** The deepest form if it may be wider by an amount of its own on each side, and deeper. */
export const reaching = (
  form: Form,
  { from, to, deep }: { readonly from: Length; readonly to: Length; readonly deep: Length },
): Form =>
  swept(
    form,
    [
      [
        { z: -from, d: deep },
        { z: to, d: deep },
      ],
    ],
    -1,
  )

/** The shallowest form if every point may be off by the box. */
export const shrunk = (form: Form, box: Box): Form => flipped(grown(flipped(form), box))

const flipped = (form: Form): readonly Piece[] => form.map((piece) => ({ ...piece, curve: mirrored(piece.curve) }))
