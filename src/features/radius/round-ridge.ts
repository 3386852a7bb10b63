import type { StepPoint } from '../../moves/cuts.ts'
import type { Length } from '../../units/length.ts'

/**
 * The ridge that a round end of radius r leaves between two places, with its tip `deep` at each: where the circles
 * cross, on the line square to the one between their centers. On an arc δ apart that is (R − r)cos(δ/2) + √(r² − (R −
 * r)² sin²(δ/2)) from the center of a hollow of radius R, and (R + r)cos(δ/2) − √(r² − (R + r)² sin²(δ/2)) from that of
 * a corner. Null: the circles do not meet, the metal between them stays.
 */
export function roundRidge(
  r: Length,
  [near, far]: readonly [near: Length, far: Length],
  deep: readonly [near: Length, far: Length],
): StepPoint | null {
  const [dz, dd] = [far - near, deep[1] - deep[0]]
  const distance = Math.hypot(dz, dd)
  const square = r * r - (distance / 2) ** 2
  if (square < 0) return null
  const across = distance === 0 ? 0 : Math.sqrt(square) / distance
  return { along: (near + far) / 2 - across * dd, deep: (deep[0] + deep[1]) / 2 - r + across * dz }
}
