import type { Curve, Form, Piece } from '../moves/form.ts'
import type { Operation, WantedDimension } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Cavity, cavityOf, flatAt } from './cavity.ts'
import { FLOOR_SLOPE, floorOf } from './floor.ts'
import { TOLERANCE } from './form/compare.ts'
import { crossings, depthAt, slope } from './form/curve.ts'
import { SLIVER } from './form/insert.ts'

/**
 * One finished size of a form as an inspector measures it, in pm (degrees for an angle); null if the form has no such size.
 * `start` is the part before the operation: only what was cut out of it is measured.
 */
export const measure = (form: Form, start: Form, operation: Operation, dimension: WantedDimension): number | null =>
  takenOf(form, start, operation, [dimension])[0]!

/** Several sizes of one form, in the order asked for. */
export const takenOf = (
  form: Form,
  start: Form,
  operation: Operation,
  dimensions: readonly WantedDimension[],
): readonly (number | null)[] => {
  const cavity = cavityOf(form, start, operation)
  return dimensions.map((one) => (cavity === null ? null : INSTRUMENTS[one.id](cavity, operation, one)))
}

type Take = (cavity: Cavity, operation: Operation, dimension: WantedDimension) => number | null

const INSTRUMENTS: Readonly<Record<WantedDimension['id'], Take>> = {
  width: (cavity, operation, { atDiameter }) => {
    const level = -(atDiameter ?? operation.surface) / 2
    const near = edgeAt(cavity.pieces, level, 1)
    const far = edgeAt(cavity.pieces, level, -1)
    return near === null || far === null ? null : far - near
  },
  depth: ({ deepest }, { surface }) => deepest + surface / 2,
  bottomDiameter: ({ deepest }) => -2 * deepest,
  near: ({ near }) => near,
  far: ({ far }) => far,
  center: ({ near, far }) => (near + far) / 2,
  root: (cavity, operation) => {
    const floor = floorOf(cavity, operation)
    return floor.length === 0 ? 0 : floor.at(-1)!.to - floor[0]!.from
  },
  angle: (cavity, operation) => {
    const { pieces, deepestAt } = cavity
    const [before, after] =
      operation.edge.ground === undefined
        ? [
            flank(
              pieces.filter(({ from }) => from < deepestAt),
              1,
            ),
            flank(
              pieces.filter(({ to }) => to > deepestAt),
              -1,
            ),
          ]
        : curvedFlanks(cavity, operation)
    return before === null || after === null ? null : before + after
  },
  flatness: (cavity, operation) => {
    const depths = floorOf(cavity, operation).flatMap(({ from, to, curve }) => [
      depthAt(curve, from),
      depthAt(curve, to),
    ])
    return depths.length === 0 ? null : Math.max(...depths) - Math.min(...depths)
  },
  radius: (cavity, operation) => (cavity.atCorner ? cornerRadius(cavity, operation) : chordRadius(cavity, operation)),
  cornerRadius: (cavity, _, { aim }) => filletsRadius(cavity, aim),
  legAlong: ({ atCorner, near, far }) => (atCorner ? far - near : null),
  legDown: ({ atCorner, deepest }, { surface }) => (atCorner ? deepest + surface / 2 : null),
}

/** Where the form meets a level, searched from the near side (1) or the far side (−1). Flanks are extended above the surface. */
const edgeAt = (pieces: readonly Piece[], level: Length, side: 1 | -1): Length | null => {
  const ordered = side === 1 ? pieces : [...pieces].reverse()
  const outer = (piece: Piece): Length => (side === 1 ? piece.from : piece.to)
  const first = ordered[0]!
  const ends = depthAt(first.curve, outer(first)) - level
  if (Math.abs(ends) <= SLIVER || (ends > 0 && !risesTo(first, side))) return outer(first)
  for (const piece of ordered) {
    const starts = depthAt(piece.curve, outer(piece))
    if (piece === first && starts > level) return carriedOn(piece, level, side)
    if (starts >= level) return outer(piece)
    const inner = meets(piece.curve, level).filter((z) => z >= piece.from && z <= piece.to)
    if (inner.length > 0) return side === 1 ? Math.min(...inner) : Math.max(...inner)
  }
  return null
}

/** Where a curve has a level, also beyond the ends of its piece: of an arc only its own half of the circle has it. */
const meets = (curve: Curve, level: Length): readonly Length[] =>
  crossings(curve, flatAt(level)).filter((z) => Math.abs(depthAt(curve, z) - level) <= TOLERANCE)

/** Does the piece keep rising outward, as a flank does? Otherwise it ends at a wall. */
const risesTo = ({ from, to, curve }: Piece, side: 1 | -1): boolean =>
  side * (depthAt(curve, to) - depthAt(curve, from)) > FLOOR_SLOPE * (to - from)

const carriedOn = (piece: Piece, level: Length, side: 1 | -1): Length => {
  const end = side === 1 ? piece.from : piece.to
  const all = meets(piece.curve, level).filter((z) => side * (end - z) >= 0)
  if (all.length === 0) return end
  return side === 1 ? Math.max(...all) : Math.min(...all)
}

/** What is sloping in the floor, a step between two passes, is no part of a flank. */
const curvedFlanks = (cavity: Cavity, operation: Operation): readonly [number | null, number | null] => {
  const { region } = operation
  const own = cavity.pieces.filter(({ from, to }) => to > region.from && from < region.to)
  const floor = floorOf(cavity, operation)
  const [first, last] = [floor[0]?.from ?? cavity.deepestAt, floor.at(-1)?.to ?? cavity.deepestAt]
  return [
    curvedFlank(
      own.filter(({ from }) => from < first),
      1,
    ),
    curvedFlank(
      own.filter(({ to }) => to > last),
      -1,
    ),
  ]
}

/** Half angle of the straight line between the ends of a flank, which a tool with a sloping face leaves curved. Degrees from square with the axis. */
const curvedFlank = (pieces: readonly Piece[], side: 1 | -1): number | null => {
  const sloping = pieces.filter(({ from, to, curve }) => risesOver(from, to, curve) * side > FLOOR_SLOPE)
  const first = sloping[0]
  if (first === undefined) return null
  const last = sloping.at(-1)!
  const rise = Math.abs(depthAt(last.curve, last.to) - depthAt(first.curve, first.from))
  return (Math.atan2(last.to - first.from, rise) * 180) / Math.PI
}

/** Half angle of the longest straight flank, degrees from square with the axis. */
const flank = (pieces: readonly Piece[], side: 1 | -1): number | null => {
  let best: { readonly length: Length; readonly angle: number } | null = null
  for (const { from, to, curve } of pieces) {
    if (curve.kind !== 'line' || slope(curve) * side <= FLOOR_SLOPE) continue
    if (best === null || to - from > best.length) {
      best = { length: to - from, angle: (Math.atan2(1, Math.abs(slope(curve))) * 180) / Math.PI }
    }
  }
  return best === null ? null : best.angle
}

const risesOver = (from: Length, to: Length, curve: Piece['curve']): number =>
  (depthAt(curve, to) - depthAt(curve, from)) / (to - from)

/** Circle through both edges at the surface and the deepest point: W²/8h + h/2. */
const chordRadius = ({ near, far, deepest }: Cavity, { surface }: Operation): number => {
  const sagitta = deepest + surface / 2
  return (far - near) ** 2 / (8 * sagitta) + sagitta / 2
}

/** The radius of the arc that makes up most of a corner. If the corner is cut in steps: the radius that a radius gauge shows. */
const cornerRadius = ({ pieces, near, far, deepest }: Cavity, operation: Operation): number => {
  const { surface } = operation
  const arcs = pieces.filter(({ curve }) => curve.kind === 'arc' && curve.side === -1)
  const longest = arcs.reduce<Piece | null>((a, b) => (a === null || b.to - b.from > a.to - a.from ? b : a), null)
  if (longest !== null && longest.curve.kind === 'arc' && longest.to - longest.from > (far - near) / 2)
    return longest.curve.r
  return gaugeRadius(pieces, near, surface) ?? (far - near + deepest + surface / 2) / 2
}

/** How many points of each piece of a stepped corner are looked at. They are away from both ends, where the form runs into the surfaces. */
const GAUGED = 32

/**
 * The arc that is tangent to both surfaces and goes through the lowest places of a stepped corner. The radius through a point z from the face and d
 * deep is z + d + √(2zd). Points on ridges give less, so the greatest counts. Only points where z and d differ by no more than four times are used.
 */
const gaugeRadius = (pieces: readonly Piece[], near: Length, surface: Length): number | null => {
  let most = 0
  for (const { from, to, curve } of pieces) {
    for (let i = 0; i <= GAUGED; i++) {
      const z = from + ((to - from) * i) / GAUGED
      const [along, deep] = [z - near, depthAt(curve, z) + surface / 2]
      if (deep > 4 * along || along > 4 * deep) continue
      most = Math.max(most, along + deep + Math.sqrt(2 * along * deep))
    }
  }
  return most === 0 ? null : most
}

/** The fillets at both walls, taken together. */
const filletsRadius = (cavity: Cavity, aim: number): number =>
  (filletRadius(cavity, 1, aim) + filletRadius(cavity, -1, aim)) / 2

/** How many points of each piece of a fillet are looked at. */
const LOOKED = 8

/**
 * The arc that is tangent to the wall and the floor and goes through the lowest places of a fillet. The radius through a point x from the wall and y
 * above the floor is x + y + √(2xy). Points on ridges give more, so the least of every cut counts, and then the mean of all cuts. Only points where x
 * and y differ by no more than four times are used. A sharp corner gives 0.
 */
const filletRadius = ({ pieces, near, far, deepest }: Cavity, side: 1 | -1, aim: Length): number => {
  const wall = side === 1 ? near : far
  const least = new Map<number, number>()
  for (const { from, to, curve, step } of pieces) {
    if (side * (from - wall) > 2 * aim && side * (to - wall) > 2 * aim) continue
    for (let i = 0; i <= LOOKED; i++) {
      const z = from + ((to - from) * i) / LOOKED
      const [x, y] = [side * (z - wall), deepest - depthAt(curve, z)]
      // Beyond the middle is the fillet of the other wall.
      if (x <= 0 || x > (far - near) / 2 || y > 4 * x || x > 4 * y) continue
      const radius = x + y + Math.sqrt(2 * x * y)
      least.set(step, Math.min(radius, least.get(step) ?? radius))
    }
  }
  return least.size === 0 ? 0 : [...least.values()].reduce((sum, radius) => sum + radius, 0) / least.size
}
