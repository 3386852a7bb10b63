import type { Length } from '../../units/length.ts'

/** Depth of a circular segment: h = R − √(R² − W²/4). Needs W ≤ 2R. Machinery's Handbook, 31st ed., p. 79. pm. */
export const sagitta = (radius: Length, width: Length): Length =>
  radius - Math.sqrt(Math.max(0, radius * radius - (width * width) / 4))

/** Width of a circular segment: W = 2√(2Rh − h²). Needs 0 ≤ h ≤ 2R. Machinery's Handbook, 31st ed., p. 79. pm. */
export const chord = (radius: Length, depth: Length): Length =>
  2 * Math.sqrt(Math.max(0, 2 * radius * depth - depth * depth))

/**
 * Radius of a circular segment from its width and depth: R = W²/8h + h/2. Machinery's Handbook, 31st ed., p. 79. pm.
 */
export const radiusFromChord = (width: Length, depth: Length): Length => (width * width) / (8 * depth) + depth / 2
