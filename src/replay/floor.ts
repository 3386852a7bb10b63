import type { Piece } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Cavity, deepestOf } from './cavity.ts'
import { depthAt, slope } from './form/curve.ts'
import { SLIVER } from './form/insert.ts'

/** A smaller slope is a floor, a larger one a flank: 1 in 10, which is far from both on every groove. */
export const FLOOR_SLOPE = 0.1

/** The run of nearly level straight pieces with the deepest point, including small steps between passes. */
export const floorOf = (cavity: Cavity, operation: Operation): readonly Piece[] => {
  const known = floors.get(cavity)
  if (known !== undefined) return known
  const found = floorIn(cavity, operation)
  floors.set(cavity, found)
  return found
}

/** Kept per cavity: its root and its flatness both need it. */
const floors = new WeakMap<Cavity, readonly Piece[]>()

const floorIn = (cavity: Cavity, operation: Operation): readonly Piece[] => {
  const { deepest } = cavity
  const pieces = betweenFillets(cavity, operation)
  const deepestAt = deepestOf(pieces).z
  const lowest = deepest - (deepest - highest(cavity.pieces)) / 10 - STEP
  const isLow = ({ from, to, curve }: Piece): boolean => depthAt(curve, (from + to) / 2) >= lowest
  const onFloor = (piece: Piece): boolean => isNearlyLevel(piece) && isLow(piece)
  const at = pieces.findIndex((piece) => piece.from <= deepestAt && piece.to >= deepestAt && onFloor(piece))
  if (at < 0) return []
  // Beside a flat of a tool with flanks a step in the floor is a slope of next to no height; a flank, or a round corner, leads to no floor behind it.
  const furthest = (way: 1 | -1): number => {
    let last = at
    for (let i = at + way; pieces[i] !== undefined; i += way) {
      if (onFloor(pieces[i]!)) last = i
      else if (!isStep(pieces[i]!, operation)) break
    }
    return last
  }
  return pieces.slice(furthest(-1), furthest(1) + 1)
}

/** Of a tool with a sloping face the flanks are curved, and so is what they leave of a step. */
const isStep = (piece: Piece, { edge }: Operation): boolean =>
  rise(piece) <= STEP && (piece.curve.kind === 'line' || edge.ground !== undefined)

const isNearlyLevel = ({ curve }: Piece): boolean => curve.kind === 'line' && Math.abs(slope(curve)) <= FLOOR_SLOPE

const highest = (pieces: readonly Piece[]): Length => {
  let top = Number.POSITIVE_INFINITY
  for (const { from, to, curve } of pieces) top = Math.min(top, depthAt(curve, from), depthAt(curve, to))
  return top
}

/** A pass along the floor begins on a mark. So an inspector's point stays this fraction of a fillet's radius away from the end. */
const OFF_FILLET = 0.1

/** What is between the walls, or a corner's face and its wall. If the drawing has fillets, what is between those, even if their lowest steps are nearly level. */
const betweenFillets = ({ pieces, near, far }: Cavity, { dimensions }: Operation): readonly Piece[] => {
  const fillet = (1 + OFF_FILLET) * (dimensions.find(({ id }) => id === 'cornerRadius')?.aim ?? 0)
  const [first, last] = [near + fillet, far - fillet]
  if (last - first <= SLIVER) return pieces
  return pieces
    .filter(({ from, to }) => to > first + SLIVER && from < last - SLIVER)
    .map((piece) => ({ ...piece, from: Math.max(piece.from, first), to: Math.min(piece.to, last) }))
}

const rise = ({ from, to, curve }: Piece): Length => Math.abs(depthAt(curve, to) - depthAt(curve, from))

/** A step in a floor is no more than this: a tenth of a millimeter, well over a mark of any dial. A sliver more is arithmetic. */
const STEP: Length = 100_000_000 + SLIVER
