import type { Form, Piece } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { TOLERANCE } from './form/compare.ts'
import { crossings, depthAt, peak } from './form/curve.ts'
import { firstBeyond, SLIVER } from './form/insert.ts'

/** What an inspector finds cut below the surface around the region: sorted pieces, none of them above the surface. */
export type Cavity = {
  readonly pieces: readonly Piece[]
  readonly near: Length
  readonly far: Length
  /** Depth (d) of its deepest point, and where that is. */
  readonly deepest: Length
  readonly deepestAt: Length
  /** On its tailstock side there is no wall but the free end or a lower step: a corner, not a groove. */
  readonly atCorner: boolean
}

/** The stretch below the surface that holds the deepest point inside the region; null where nothing is cut. */
export const cavityOf = (form: Form, start: Form, operation: Operation): Cavity | null => {
  const surface = -operation.surface / 2
  const below = cutOff(form, surface).filter((piece) => isCut(piece, start))
  const { from, to } = operation.region
  const bounds = cornerBound(start, operation)
  const inside = below.filter((piece) => piece.to > Math.max(from, bounds) && piece.from < to)
  const deepestPiece = inside.reduce<Piece | null>(
    (best, piece) => (best === null || peak(piece).d > peak(best).d ? piece : best),
    null,
  )
  if (deepestPiece === null) return null
  const pieces = connected(
    below.filter((piece) => piece.to > bounds),
    deepestPiece,
  )
  const top = pieces.map(peak).reduce((a, b) => (b.d > a.d ? b : a))
  const atCorner = bounds > Number.NEGATIVE_INFINITY
  const near = Math.max(pieces[0]!.from, bounds)
  return { pieces, near, far: pieces.at(-1)!.to, deepest: top.d, deepestAt: top.z, atCorner }
}

/** Where a corner feature begins: at the free end, or at the face of a step whose neighbor toward the tailstock is lower than anything wanted. */
const cornerBound = (start: Form, operation: Operation): Length => {
  const before = start.findLast((piece) => piece.from < operation.region.from - SLIVER)
  const wantedDeepest = Math.max(...operation.wanted.map((piece) => peak(piece).d))
  if (before === undefined) return atFreeEnd(start, operation) ? operation.region.from : Number.NEGATIVE_INFINITY
  const beside = depthAt(before.curve, Math.min(before.to, operation.region.from) - SLIVER)
  return beside >= wantedDeepest - TOLERANCE ? operation.region.from : Number.NEGATIVE_INFINITY
}

const atFreeEnd = (start: Form, operation: Operation): boolean =>
  start.length > 0 && operation.region.from <= start[0]!.from + SLIVER

/** Only what lies below a level, each piece cut where it crosses it. */
const cutOff = (form: Form, level: Length): readonly Piece[] =>
  form.flatMap((piece) => {
    const flat = { kind: 'line', z0: piece.from, d0: level, z1: piece.to, d1: level } as const
    const inner = crossings(piece.curve, flat).filter((z) => z > piece.from + SLIVER && z < piece.to - SLIVER)
    const ends = [piece.from, ...[...inner].sort((a, b) => a - b), piece.to]
    return ends
      .slice(1)
      .map((to, index) => ({ ...piece, from: ends[index]!, to }))
      .filter(({ from, to }) => depthAt(piece.curve, (from + to) / 2) > level + TOLERANCE / 4)
  })

/** Was this stretch cut out of the part as it was? A lower step beside a groove was not. */
const isCut = ({ from, to, curve }: Piece, start: Form): boolean => {
  const middle = (from + to) / 2
  const before = start[firstBeyond(start, middle)]
  return before !== undefined && depthAt(curve, middle) > depthAt(before.curve, middle) + TOLERANCE / 4
}

/** The run of abutting pieces around one of them. */
const connected = (below: readonly Piece[], start: Piece): readonly Piece[] => {
  let first = below.indexOf(start)
  let last = first
  while (first > 0 && below[first]!.from - below[first - 1]!.to < SLIVER) first--
  while (last < below.length - 1 && below[last + 1]!.from - below[last]!.to < SLIVER) last++
  return below.slice(first, last + 1)
}
