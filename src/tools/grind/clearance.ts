import type { Degrees } from '../../units/dimension.ts'

/** Plane ground on one side of the bit, as a protractor measures it with the bit lying level; degrees. */
export type SidePlane = {
  /** How far the side slopes inward going down. */
  readonly relief: Degrees
  /** How far it slopes inward going back from the edge; a flank of a V widens, so this is minus its half-angle. */
  readonly back: Degrees
}

/** How the bit is held: the tilt of the holder lifts its end; rake ground on the top; degrees. */
export type Mounting = { readonly tilt: Degrees; readonly rakeGround: Degrees }

/**
 * The same plane relative to the work. The bit, and with it the side's normal, is turned by the tilt about the axis
 * along the work. `edge`: how the edge on the face narrows going straight back from the tip, which is what must clear a
 * groove's wall: everything under the edge is further in. `relief`: how the side slopes inward going straight down.
 */
export function sideInUse(plane: SidePlane, mounting: Mounting): { edge: Degrees; relief: Degrees } {
  const normal = tilted({ back: tan(plane.back), along: 1, up: -tan(plane.relief) }, mounting.tilt)
  const rake = mounting.rakeGround + mounting.tilt
  // A step of 1 straight back on the face also goes down by tan(rake); from the plane follows how far along that moves
  // the edge.
  const narrowing = (normal.back - normal.up * tan(rake)) / normal.along
  return { edge: atan(narrowing), relief: atan(-normal.up / normal.along) }
}

/** Clearance to grind, so that at least `wanted` degrees are left in use behind an edge with this side relief. */
export function backToGrind(wanted: Degrees, relief: Degrees, mounting: Mounting): Degrees {
  const rake = mounting.rakeGround + mounting.tilt
  const [c, s] = [cos(mounting.tilt), sin(mounting.tilt)]
  const perBack = c + s * tan(rake)
  return atan((tan(wanted) + tan(relief) * (s - c * tan(rake))) / perBack)
}

/**
 * Relief to grind under a flank whose edge is at `half` on the face, so that `wanted` is left in use: the tilt takes
 * some of the relief because of the flank's slope.
 */
export function flankRelief(wanted: Degrees, half: Degrees, { tilt, rakeGround }: Mounting): Degrees {
  const lost = (tan(half) * sin(tilt)) / cos(rakeGround)
  return atan((tan(wanted) + lost) / (cos(tilt) - tan(rakeGround) * sin(tilt)))
}

/**
 * A flank whose edge is at `half` on the face, as a plane: what the protractor measures straight back along the bit.
 */
export const flankPlane = (half: Degrees, relief: Degrees, rakeGround: Degrees): SidePlane => ({
  relief,
  back: -atan((tan(half) + sin(rakeGround) * tan(relief)) / cos(rakeGround)),
})

type Vector = { readonly back: number; readonly along: number; readonly up: number }

/** The end goes up, so a vector that pointed back then points down as well, and one that pointed up leans back. */
const tilted = ({ back, along, up }: Vector, tilt: Degrees): Vector => ({
  back: back * cos(tilt) + up * sin(tilt),
  along,
  up: up * cos(tilt) - back * sin(tilt),
})

const RADIANS = Math.PI / 180
const sin = (angle: Degrees): number => Math.sin(angle * RADIANS)
const cos = (angle: Degrees): number => Math.cos(angle * RADIANS)
const tan = (angle: Degrees): number => Math.tan(angle * RADIANS)
const atan = (slope: number): Degrees => Math.atan(slope) / RADIANS
