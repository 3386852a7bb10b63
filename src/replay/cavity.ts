import type { Form, Line, Piece } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { TOLERANCE } from './form/compare.ts'
import { depthAt, isLevel, peak } from './form/curve.ts'
import { firstBeyond, SLIVER, splits } from './form/insert.ts'

/** What is cut below the surface around the region, as an inspector finds it: sorted pieces, none above the surface. */
export type Cavity = {
  readonly pieces: readonly Piece[]
  readonly near: Length
  readonly far: Length
  /** Depth (d) of its deepest point, and where that is. */
  readonly deepest: Length
  readonly deepestAt: Length
  /** A corner, not a groove: on its tailstock side there is the free end or a lower step instead of a wall. */
  readonly atCorner: boolean
}

/**
 * The stretch below the surface that has the deepest point of the region; null if nothing is cut. Only the region is searched, and the cut metal that
 * continues from it to both sides.
 */
export const cavityOf = (form: Form, start: Form, operation: Operation): Cavity | null => {
  const level = flatAt(-operation.surface / 2)
  const bounds = cornerBound(start, operation)
  const { from, to } = operation.region
  // In the region all that is below the surface belongs to the feature, whoever cut it: another tool may have opened it up before.
  const isCut: IsCut = (d, z) => (z >= from && z <= to) || deeperThan(start, d, z)
  const cutIn = (index: number): readonly Piece[] => cutBelow(form[index]!, level, isCut, bounds)
  const first = firstBeyond(form, from)
  const below: Piece[] = []
  let next = first
  for (; next < form.length && form[next]!.from < to; next++) below.push(...cutIn(next))
  const deepest = deepestIn(below, from, to)
  if (deepest === null) return null
  const pieces = connected(below, deepest)
  for (let i = first - 1; i >= 0 && joins(form[i]!, pieces[0]!); i--)
    for (const piece of cutIn(i).toReversed()) if (joins(piece, pieces[0]!)) pieces.unshift(piece)
  for (let i = next; i < form.length && joins(pieces.at(-1)!, form[i]!); i++)
    for (const piece of cutIn(i)) if (joins(pieces.at(-1)!, piece)) pieces.push(piece)
  const top = deepestOf(pieces)
  const atCorner = bounds > Number.NEGATIVE_INFINITY
  const near = Math.max(pieces[0]!.from, bounds)
  return { pieces, near, far: pieces.at(-1)!.to, deepest: top.d, deepestAt: top.z, atCorner }
}

/** A level line, wherever it is needed. */
export const flatAt = (level: Length): Line => ({ kind: 'line', z0: 0, d0: level, z1: 1, d1: level })

const deepestIn = (below: readonly Piece[], from: Length, to: Length): Piece | null => {
  let found: Piece | null = null
  let most = Number.NaN
  for (const piece of below) {
    if (piece.to <= from || piece.from >= to) continue
    const { d } = peak(piece)
    if (found !== null && !(d > most)) continue
    found = piece
    most = d
  }
  return found
}

/** The deepest point of several pieces; of equally deep ones the first. */
export const deepestOf = (pieces: readonly Piece[]): { readonly z: Length; readonly d: Length } =>
  pieces.reduce((most, piece, i) => {
    const one = i === 0 ? most : peak(piece)
    return one.d > most.d ? one : most
  }, peak(pieces[0]!))

/** Where a corner feature begins: at the free end, or at the face of a step whose neighbor toward the tailstock is lower than anything wanted. */
const cornerBound = (start: Form, operation: Operation): Length => {
  const before = lastFrom(start, operation.region.from - SLIVER)
  const wantedDeepest = deepestOf(operation.wanted).d
  if (before === undefined) return operation.region.from
  const beside = depthAt(before.curve, Math.min(before.to, operation.region.from) - SLIVER)
  return beside >= wantedDeepest - TOLERANCE ? operation.region.from : Number.NEGATIVE_INFINITY
}

/** The last piece that begins before a place. */
const lastFrom = (form: Form, z: Length): Piece | undefined => {
  let at = firstBeyond(form, z)
  while (at < form.length && form[at]!.from < z) at++
  return form[at - 1]
}

/** The parts of a piece that were cut and are below a level, within the bounds. */
const cutBelow = (piece: Piece, level: Line, isCut: IsCut, bounds: Length): readonly Piece[] => {
  const { from, to, curve, step } = piece
  if (isLevel(curve))
    return curve.d0 > level.d0 + TOLERANCE / 4 && isCut(curve.d0, (from + to) / 2) && to > bounds ? [piece] : []
  const found: Piece[] = []
  let left = from
  for (const right of splits(curve, level, from, to)) {
    const middle = (left + right) / 2
    const d = depthAt(curve, middle)
    if (d > level.d0 + TOLERANCE / 4 && isCut(d, middle) && right > bounds)
      found.push(left === from && right === to ? piece : { from: left, to: right, curve, step })
    left = right
  }
  return found
}

type IsCut = (d: Length, z: Length) => boolean

/** Was it cut by this operation? A lower step beside a groove was there before. */
const deeperThan = (start: Form, d: Length, z: Length): boolean => {
  const before = start[firstBeyond(start, z)]
  return before !== undefined && d > depthAt(before.curve, z) + TOLERANCE / 4
}

const joins = (one: Piece, next: Piece): boolean => next.from - one.to < SLIVER

/** The unbroken run of pieces around one of them. */
const connected = (below: readonly Piece[], start: Piece): Piece[] => {
  let first = below.indexOf(start)
  let last = first
  while (first > 0 && joins(below[first - 1]!, below[first]!)) first--
  while (last < below.length - 1 && joins(below[last]!, below[last + 1]!)) last++
  return below.slice(first, last + 1)
}
