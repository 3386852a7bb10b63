import { exact, say } from '../../phrase/say.ts'
import { INCH, type Length } from '../../units/length.ts'
import type { Bench, Refusal } from '../draft.ts'
import type { ConcaveFeature } from '../feature.ts'
import { chord, radiusFromChord, sagitta } from './segment.ts'

/**
 * Width and depth from the radius and one of them; if both are given they are checked, and a refusal lists every pair.
 */
export function solveConcave(
  bench: Bench,
  feature: ConcaveFeature,
  radius: Length,
): { width: Length; depth: Length } | Refusal {
  const show = (length: Length) => exact('drawing', length, bench.units)
  const width = feature.width?.aim
  const depth = feature.depth?.aim
  if (width !== undefined && width > 2 * radius)
    return {
      code: 'no-solution',
      reason: say`a radius of ${show(radius)} cannot be ${show(width)} wide: ${show(2 * radius)} is its whole diameter`,
      remedy: 'correct the width or the radius',
    }
  if ((depth ?? 0) > radius)
    return {
      code: 'no-solution',
      reason: say`the groove is ${show(depth!)} deep, deeper than its radius ${show(radius)}`,
      remedy: 'a straight-sided full-radius groove is another form; correct the depth or the radius',
    }
  if (width === undefined) return { width: chord(radius, depth!), depth: depth! }
  const found = sagitta(radius, width)
  if (depth === undefined) return { width, depth: found }
  const slack = feature.depth!.limits === null ? INCH / 1000 : (feature.depth!.limits[1] - feature.depth!.limits[0]) / 2
  if (Math.abs(found - depth) <= slack) return { width, depth: found }
  return {
    code: 'contradiction',
    reason: say`radius ${show(radius)}, width ${show(width)} and depth ${show(depth)} contradict each other: radius and width give a depth of ${show(found)}; radius and depth a width of ${show(chord(radius, depth))}; width and depth a radius of ${show(radiusFromChord(width, depth))}`,
    remedy: 'give two of the three, or correct the wrong one',
  }
}
