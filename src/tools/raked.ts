import type { Form, Piece } from '../moves/form.ts'
import { arcPiece, linePiece } from '../moves/pieces.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import { depthAt } from './grind/form.ts'

/**
 * How a face meets the work: its rake in use, and the radius of the work at the tip of the edge, at the bottom of the
 * form.
 */
export type Stance = { readonly rake: Degrees; readonly floor: Length }

/** No point of the pieces is further than this from the true edge: 20 nm. */
export const FITTED_WITHIN: Length = 20_000

/** From the tip of a circle out to one side. */
export function quarter(radius: Length, half: Length, stance: Stance): Form {
  const turn = Math.asin(Math.min(1, half / radius))
  const round = (part: number): Point => {
    const angle = part * turn
    return at(radius * Math.sin(angle), 2 * radius * Math.sin(angle / 2) ** 2, stance)
  }
  return fitted(round, ['level', half >= radius ? 'upright' : null])
}

export type Point = { readonly u: Length; readonly e: Length }
/** How an edge leaves its end: along the work, square to it, or neither. */
type Tangent = 'level' | 'upright' | null

/** A point of the face, `along` beside the tip and `back` from it on the face, as it meets the work. */
export const at = (along: Length, back: Length, { rake, floor }: Stance): Point => ({
  u: along,
  e: -depthAt(back, floor, rake),
})

/** Lines and circles along a path of rising u, halved until none is further off than allowed. */
export function fitted(path: (part: number) => Point, [first, last]: readonly [Tangent, Tangent]): Form {
  const between = (from: number, to: number, halved: number): Piece[] => {
    const tangents = [from === 0 ? first : null, to === 1 ? last : null] as const
    const piece = tangents.every((one) => one !== null)
      ? null
      : joined(path(from), path(to), tangents, inside(from, to))
    if (piece !== null) return [piece]
    const [a, b] = [path(from), path(to)]
    if (halved === MOST_HALVED) return [linePiece(a.u, a.e, b.u, b.e)]
    const middle = (from + to) / 2
    return [...between(from, middle, halved + 1), ...between(middle, to, halved + 1)]
  }
  const inside = (from: number, to: number) =>
    Array.from({ length: 7 }, (_, i) => path(from + ((to - from) * (i + 1)) / 8))
  return between(0, 1, 0)
}

/**
 * A path inside a piece of work is never halved more than five times; one that needs more is not inside any, and the
 * form is refused for that.
 */
const MOST_HALVED = 10

/** One piece from a to b that passes all points between them within the allowed distance; null if there is none. */
function joined(
  a: Point,
  b: Point,
  [first, last]: readonly [Tangent, Tangent],
  points: readonly Point[],
): Piece | null {
  const line = linePiece(a.u, a.e, b.u, b.e)
  const long = Math.hypot(b.u - a.u, b.e - a.e)
  const beside = (p: Point) => Math.abs((b.u - a.u) * (p.e - a.e) - (b.e - a.e) * (p.u - a.u)) / long
  if (points.every((point) => beside(point) < FITTED_WITHIN / 2)) return line
  const circle = first !== null ? leaving(a, b, first) : last !== null ? leaving(b, a, last) : through(a, points[3]!, b)
  const near = (p: Point) =>
    Math.abs(Math.hypot(p.u - circle.u, p.e - circle.e) - circle.r) < FITTED_WITHIN / 2 &&
    (p.e - circle.e) * circle.side > 0
  return points.every(near) ? arcPiece(a.u, b.u, circle.u, circle.e, circle.r, circle.side) : null
}

type Circle = Point & { readonly r: Length; readonly side: 1 | -1 }

/** The circle that leaves p in a known direction and passes q. */
function leaving(p: Point, q: Point, tangent: 'level' | 'upright'): Circle {
  const [du, de] = [q.u - p.u, q.e - p.e]
  const square = du * du + de * de
  if (tangent === 'level') {
    const r = square / (2 * Math.abs(de))
    return { u: p.u, e: p.e + Math.sign(de) * r, r, side: de < 0 ? 1 : -1 }
  }
  const r = square / (2 * Math.abs(du))
  return { u: p.u + Math.sign(du) * r, e: p.e, r, side: de > 0 ? 1 : -1 }
}

/**
 * The circle through three points, worked from the middle one so that no large numbers are subtracted from each other.
 */
function through(a: Point, m: Point, b: Point): Circle {
  const [au, ae, bu, be] = [a.u - m.u, a.e - m.e, b.u - m.u, b.e - m.e]
  const cross = 2 * (au * be - ae * bu)
  const [a2, b2] = [au * au + ae * ae, bu * bu + be * be]
  const [u, e] = [(be * a2 - ae * b2) / cross, (au * b2 - bu * a2) / cross]
  return { u: m.u + u, e: m.e + e, r: Math.hypot(u, e), side: e < 0 ? 1 : -1 }
}

export const mirrored = (form: Form): Piece[] =>
  form
    .map(
      ({ from, to, curve, step }): Piece => ({
        from: -to,
        to: -from,
        curve:
          curve.kind === 'arc'
            ? { ...curve, zc: -curve.zc }
            : { kind: 'line', z0: -curve.z1, d0: curve.d1, z1: -curve.z0, d1: curve.d0 },
        step,
      }),
    )
    .reverse()

export const moved = ({ from, to, curve, step }: Piece, by: Length): Piece => ({
  from: from + by,
  to: to + by,
  curve: curve.kind === 'arc' ? { ...curve, zc: curve.zc + by } : { ...curve, z0: curve.z0 + by, z1: curve.z1 + by },
  step,
})
