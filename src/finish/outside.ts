import type { Curve, Form, Piece } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import type { Shop } from './measured.ts'

/** The drawing gives a depth: the form depends on the outside diameter as it really is. */
export const hangsOnOutside = ({ operation }: Pick<Shop, 'operation'>): boolean =>
  !operation.dimensions.some(({ id, fixed }) => id === 'bottomDiameter' && fixed === true)

/**
 * The same shop on work with another outside diameter than the sheet was made for. The tool touched that surface, so the readings are depths below it,
 * and a depth on the drawing counts from it. pm of diameter.
 */
export const onOutside = (shop: Shop, outside: Length | null): Shop => {
  const { operation, progress, setup, stop } = shop
  const by = outside === null || !hangsOnOutside(shop) ? 0 : outside - operation.surface
  if (by === 0) return shop
  const real = (form: Form): Form =>
    form.map((piece) => (onSurface(piece, operation.surface) ? out(piece, by / 2) : piece))
  return {
    ...shop,
    setup: { ...setup, stock: real(setup.stock) },
    progress: { surely: real(progress.surely), possibly: real(progress.possibly), allowed: real(progress.allowed) },
    stop: { ...stop, expected: stop.expected + by },
    operation: {
      ...operation,
      surface: operation.surface + by,
      touch: { ...operation.touch, diameter: operation.touch.diameter + by },
      wanted: operation.wanted.map((piece) => out(piece, by / 2)),
      ...(operation.atLeast === undefined ? {} : { atLeast: operation.atLeast.map((piece) => out(piece, by / 2)) }),
      dimensions: operation.dimensions.map((dimension) =>
        dimension.id === 'bottomDiameter' ? { ...dimension, aim: dimension.aim + by } : dimension,
      ),
    },
  }
}

const onSurface = ({ curve }: Piece, surface: Length): boolean =>
  curve.kind === 'line' && Math.abs(curve.d0 + surface / 2) < 1 && Math.abs(curve.d1 + surface / 2) < 1

/** Further from the axis by this much; d = −radius. */
const out = (piece: Piece, by: Length): Piece => {
  const { curve } = piece
  const moved: Curve =
    curve.kind === 'line' ? { ...curve, d0: curve.d0 - by, d1: curve.d1 - by } : { ...curve, dc: curve.dc - by }
  return { ...piece, curve: moved }
}
