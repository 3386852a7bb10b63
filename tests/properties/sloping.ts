import type { Tape } from './tape.ts'

/** How a tool's face slopes, as the toolbox says it, and what is to be ground on it for an angle or a radius to come out. */
export type Sloping = { keys: string; angle: (included: number) => number; radius: (radius: number) => number }

const level: Sloping = { keys: '', angle: (included) => included, radius: (radius) => radius }

/** Now and then a face with rake in use, mostly ground to what it needs, else to the drawing. */
export function sloping(tape: Tape, surface: number, depth: number): Sloping {
  if (!tape.chance(30)) return level
  const [keys, rake] = tape.pick([
    [', holder-angle: 14.5', 14.5],
    [', holder-angle: 14.5, rake-ground: 2', 16.5],
    [', rake-in-use: 6', 6],
    [', holder-angle: 10, rake-ground: -13', -3],
  ] as const)
  if (tape.chance(20)) return { ...level, keys }
  const back = faceOver(surface / 2 - depth, surface / 2, rake)
  const square = (radius: number): number => 2 * radius * depth - depth * depth
  return {
    keys,
    angle: (included) => (2 * Math.atan((depth / back) * Math.tan((included * Math.PI) / 360)) * 180) / Math.PI,
    radius: (radius) => (depth < radius ? (square(radius) + back * back) / (2 * back) : radius),
  }
}

/** Length on the face from a tip that stands on center to the surface: the side of a triangle whose two others, and one angle, are known. */
function faceOver(floor: number, surface: number, rake: number): number {
  if (floor <= 0) return surface - floor
  const at = Math.PI - (rake * Math.PI) / 180
  const other = Math.asin((floor * Math.sin(at)) / surface)
  return (surface * Math.sin(Math.PI - at - other)) / Math.sin(at)
}
