import type { Arc, Curve, Line, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'

/** Depth of a curve at z. A hair beyond the end of an arc it is the depth of that end. */
export const depthAt = (curve: Curve, z: Length): Length => {
  if (curve.kind === 'line') return onLine(curve, z)
  const x = z - curve.zc
  return curve.dc + curve.side * Math.sqrt(Math.max(0, (curve.r - x) * (curve.r + x)))
}

/** Most pieces of a part are level. */
const onLine = (line: Line, z: Length): Length => {
  if (line.d0 === line.d1) return line.d0
  return line.z1 === line.z0 ? Math.max(line.d0, line.d1) : line.d0 + (z - line.z0) * slope(line)
}

export const isLevel = (curve: Curve): curve is Line => curve.kind === 'line' && curve.d0 === curve.d1

/** dd/dz of a straight line. */
export const slope = (line: Line): number => (line.z1 === line.z0 ? 0 : (line.d1 - line.d0) / (line.z1 - line.z0))

export const moved = (curve: Curve, dz: Length, dd: Length): Curve =>
  curve.kind === 'arc'
    ? { kind: 'arc', zc: curve.zc + dz, dc: curve.dc + dd, r: curve.r, side: curve.side }
    : { kind: 'line', z0: curve.z0 + dz, d0: curve.d0 + dd, z1: curve.z1 + dz, d1: curve.d1 + dd }

/** The same curve with the sign of depth changed. */
export const mirrored = (curve: Curve): Curve =>
  curve.kind === 'arc'
    ? { ...curve, dc: -curve.dc, side: curve.side === 1 ? -1 : 1 }
    : { ...curve, d0: -curve.d0, d1: -curve.d1 }

export const sameCurve = (a: Curve, b: Curve): boolean => {
  if (a === b) return true
  if (a.kind === 'line') {
    return b.kind === 'line' && a.z0 === b.z0 && a.d0 === b.d0 && a.z1 === b.z1 && a.d1 === b.d1
  }
  return b.kind === 'arc' && a.zc === b.zc && a.dc === b.dc && a.r === b.r && a.side === b.side
}

/**
 * Every z at which two curves can cross. Both halves of a circle are looked at, so some are not crossings of the curves themselves:
 * callers split there and look in between.
 */
export const crossings = (a: Curve, b: Curve): readonly Length[] => {
  if (a.kind === 'line') return b.kind === 'line' ? lineLine(a, b) : lineArc(a, b)
  return b.kind === 'line' ? lineArc(b, a) : arcArc(a, b)
}

const lineLine = (a: Line, b: Line): readonly Length[] => {
  const z = lineCrossing(a, b)
  return Number.isNaN(z) ? [] : [z]
}

/** Where two straight lines cross; NaN if they are parallel. */
export const lineCrossing = (a: Line, b: Line): Length => {
  if (a.d0 === a.d1 && b.d0 === b.d1) return Number.NaN
  const steeper = slope(a) - slope(b)
  return steeper === 0 ? Number.NaN : a.z0 - (a.d0 - depthAt(b, a.z0)) / steeper
}

const lineArc = (line: Line, arc: Arc): readonly Length[] => {
  const m = slope(line)
  const q = depthAt(line, arc.zc) - arc.dc
  const inside = arc.r * arc.r * (1 + m * m) - q * q
  if (inside < 0) return []
  const half = Math.sqrt(inside)
  return [arc.zc + (-q * m - half) / (1 + m * m), arc.zc + (-q * m + half) / (1 + m * m)]
}

const arcArc = (a: Arc, b: Arc): readonly Length[] => {
  const z = b.zc - a.zc
  const d = b.dc - a.dc
  const apart = Math.hypot(z, d)
  if (apart === 0) return []
  const along = ((a.r - b.r) * (a.r + b.r)) / (2 * apart) + apart / 2
  const square = (a.r - along) * (a.r + along)
  if (square < 0) return []
  const across = Math.sqrt(square)
  const foot = a.zc + (along * z) / apart
  return [foot - (across * d) / apart, foot + (across * d) / apart]
}

/** The z inside an arc's circle where its slope is m. */
export const whereSlope = (arc: Arc, m: number): Length => arc.zc - (arc.side * m * arc.r) / Math.sqrt(1 + m * m)

/** Every z at which two curves can have the same slope: there their distance is greatest or least. */
export const equalSlopes = (a: Curve, b: Curve): readonly Length[] => {
  if (a.kind === 'line') return b.kind === 'line' ? [] : [whereSlope(b, slope(a))]
  if (b.kind === 'line') return [whereSlope(a, slope(b))]
  if (a.side !== b.side) return [(a.zc * b.r + b.zc * a.r) / (a.r + b.r)]
  return a.r === b.r ? [] : [(a.zc * b.r - b.zc * a.r) / (b.r - a.r)]
}

/** The deepest point of one piece. */
export const peak = ({ from, to, curve }: Piece): { readonly z: Length; readonly d: Length } => {
  if (isLevel(curve)) return { z: from, d: curve.d0 }
  const first = depthAt(curve, from)
  const last = depthAt(curve, to)
  const ends = last > first ? { z: to, d: last } : { z: from, d: first }
  if (curve.kind !== 'arc' || curve.side !== 1 || curve.zc <= from || curve.zc >= to) return ends
  const inner = depthAt(curve, curve.zc)
  return inner > ends.d ? { z: curve.zc, d: inner } : ends
}
