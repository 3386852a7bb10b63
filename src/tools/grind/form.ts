import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'

/**
 * A face with rake γ is a sloping plane through the tip, and the tip is on center: so the cut differs from what is
 * ground on the face. Lengths in pm, angles in degrees; `floor` and `surface` are radii of the work. Plane geometry;
 * the same formulas serve negative rake.
 */

/**
 * Length along the face from the tip to where it meets the surface, for a form `depth` deep: L = −ρ cos γ + √(ρ² cos² γ
 * + D² + 2ρD).
 */
export function faceLength(depth: Length, floor: Length, rake: Degrees): Length {
  const level = floor * cos(rake)
  return Math.sqrt(level * level + depth * depth + 2 * floor * depth) - level
}

/** Depth that a point of the face leaves uncut above the floor: √((ρ + L cos γ)² + (L sin γ)²) − ρ. */
export const depthAt = (face: Length, floor: Length, rake: Degrees): Length =>
  Math.hypot(floor + face * cos(rake), face * sin(rake)) - floor

/** Depth of the tip when the point at `face` from it is on the surface. */
export const depthReached = (face: Length, surface: Length, rake: Degrees): Length =>
  surface - (Math.sqrt(Math.max(0, surface * surface - (face * sin(rake)) ** 2)) - face * cos(rake))

/**
 * A length on the face as it measures square to the front: T = L cos(clearance + rake), all in use; the cosine of the
 * clearance without rake.
 */
export const squareToFront = (face: Length, clearance: Degrees, rake: Degrees): Length => face * cos(clearance + rake)

/** Half-angle to grind and gauge on the face, so that the flank is cut at `half` between the floor and the surface. */
export const halfAngleToGrind = (half: Degrees, depth: Length, face: Length): Degrees =>
  atan((depth * tan(half)) / face)

/** Half-angle cut by a V ground to `half` on its face and fed to the full depth. */
export const halfAngleCut = (half: Degrees, depth: Length, face: Length): Degrees => atan((face * tan(half)) / depth)

/**
 * Radius to grind on the face: through the tip and the points that cut the edges of a segment of `radius`, `depth`
 * deep.
 */
export const radiusToGrind = (radius: Length, depth: Length, face: Length): Length =>
  halfChordSquared(radius, depth) / (2 * face) + face / 2

/**
 * The cut of a round tool of `radius` on its face, fed to the full depth: width at the surface, and the radius through
 * its edges and bottom.
 */
export function roundCut(radius: Length, depth: Length, face: Length): { width: Length; radius: Length } {
  const half = halfChordSquared(radius, Math.min(face, radius))
  return { width: 2 * Math.sqrt(half), radius: half / (2 * depth) + depth / 2 }
}

/** How far a flank that is straight on the face is from straight in the work, in depth. */
export const flankStrays = (depth: Length, face: Length, floor: Length, rake: Degrees): Length =>
  greatest((part) => depthAt(part * face, floor, rake) - part * depth)

/**
 * How far a round edge of radius `ground` on the face cuts beside the circle of the form, in depth, between its bottom
 * and its edges.
 */
export function roundStrays(of: {
  readonly radius: Length
  readonly ground: Length
  readonly depth: Length
  readonly floor: Length
  readonly rake: Degrees
}): Length {
  const half = Math.sqrt(halfChordSquared(of.radius, of.depth))
  const sagitta = (radius: Length, along: Length) => radius - Math.sqrt(Math.max(0, radius * radius - along * along))
  return greatest(
    (part) => depthAt(sagitta(of.ground, part * half), of.floor, of.rake) - sagitta(of.radius, part * half),
  )
}

/**
 * A point of a hollow quarter, from its deep end: along the work, up the wanted form, back on the face to grind it so,
 * and up the work if it is ground as drawn.
 */
export type HollowPoint = {
  readonly along: Length
  readonly work: Length
  readonly face: Length
  readonly uncorrected: Length
}

/** `parts` points of a quarter of `radius`, evenly over its arc, the last one at the surface. */
export function hollowPoints(radius: Length, surface: Length, rake: Degrees, parts: number): HollowPoint[] {
  const cut = depthReached(radius, surface, rake)
  return Array.from({ length: parts }, (_, i) => {
    const turn = (90 * (i + 1)) / parts
    const work = radius * sin(turn)
    return {
      along: radius * (1 - cos(turn)),
      work,
      face: faceLength(work, surface - radius, rake),
      uncorrected: depthAt(work, surface - cut, rake),
    }
  })
}

/**
 * The circle through both ends and the middle of a curve from (0, 0), and how far the curve is from it. An even number
 * of points.
 */
export function nearestCircle(points: readonly (readonly [along: Length, up: Length])[]): {
  radius: Length
  strays: Length
} {
  const [m, end] = [points[points.length / 2 - 1]!, points.at(-1)!]
  const twice = 2 * (m[0] * end[1] - m[1] * end[0])
  const [m2, end2] = [m[0] ** 2 + m[1] ** 2, end[0] ** 2 + end[1] ** 2]
  const center = [(end[1] * m2 - m[1] * end2) / twice, (m[0] * end2 - end[0] * m2) / twice] as const
  const radius = Math.hypot(...center)
  const off = points.map(([along, up]) => Math.abs(Math.hypot(along - center[0], up - center[1]) - radius))
  return { radius, strays: Math.max(...off) }
}

/** Greatest size of a difference that is zero at both ends of its range. */
const greatest = (of: (part: number) => number): number =>
  Math.max(...Array.from({ length: 65 }, (_, i) => Math.abs(of(i / 64))))

/** (W/2)² of a segment: 2Rh − h². Machinery's Handbook, 31st ed., p. 79. */
const halfChordSquared = (radius: Length, depth: Length): number => Math.max(0, 2 * radius * depth - depth * depth)

const RADIANS = Math.PI / 180
const sin = (angle: Degrees): number => Math.sin(angle * RADIANS)
const cos = (angle: Degrees): number => Math.cos(angle * RADIANS)
const tan = (angle: Degrees): number => Math.tan(angle * RADIANS)
const atan = (slope: number): Degrees => Math.atan(slope) / RADIANS
