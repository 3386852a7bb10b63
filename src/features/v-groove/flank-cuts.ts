import type { FlankCuts } from '../../moves/cuts.ts'
import { degrees, say } from '../../phrase/say.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Bench, Refusal } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { roughDepthsTo } from '../plunge.ts'
import { defaultVeeInfeed, leftFor } from '../shop.ts'
import { shrinkingInfeeds } from './infeeds.ts'
import type { Shape } from './wanted.ts'

/**
 * Down the tailstock-side flank by the compound: the nose and one flank cut, so the contact grows half as fast as in a
 * plunge.
 */
export function flankCuts(
  bench: Bench,
  { cutting, ...feature }: VGrooveFeature,
  tool: VeeTool,
  shape: Shape,
): FlankCuts {
  const { depth, t } = shape
  const first = depth * t
  const infeed = cutting.infeed ?? defaultVeeInfeed(bench.units)
  const leave = leftFor(bench.units, { ...cutting, infeed }, depth)
  return {
    style: 'flank',
    slope: t,
    plunged: underOf({ cutting, ...feature }, shape.angle) > 0,
    first,
    last: first + Math.max(0, shape.root - tool.nose),
    nose: tool.nose,
    spacing: tool.nose > 0 ? tool.nose * 0.9 : null,
    depth,
    roughDepths: leave > 0 ? shrinkingInfeeds(roughDepthsTo, depth - leave, infeed, tool.nose, t / 2) : [],
    infeed,
  }
}

/** Half the included angle from square, less what it is set under that: from parallel. */
export const flankAngle = (feature: VGrooveFeature, included: number): number =>
  90 - included / 2 + underOf(feature, included)

/** A minute of angle does not show on a swivel scale. */
const MINUTE = 1 / 60

/** As the job sets the compound: then that is what it is under by. Otherwise by the key. Degrees. */
function underOf({ cutting, flankUnder }: VGrooveFeature, included: number): number {
  const given = cutting.compoundAngle === null ? null : cutting.compoundAngle - (90 - included / 2)
  if (given === null || given < -MINUTE || given > MOST_UNDER + MINUTE) return flankUnder
  return given < MINUTE ? 0 : given
}

/** Further under, the trailing flank would be cut in steps that the plunge has to take off. */
const MOST_UNDER = 1

/**
 * A compound that the job sets to another angle contradicts the method, and so does another slide for the side feed; a
 * minute of angle does not show on a swivel scale.
 */
export function flankRefusal(feature: VGrooveFeature, included: number): Refusal | null {
  const { cutting } = feature
  if (cutting.sideFeed !== 'compound')
    return {
      code: 'side-feed',
      reason: say`flank feed is made by the compound alone, and side-feed: ${cutting.sideFeed} is asked for`,
      remedy: 'leave side-feed out for this feature, or leave out method: flank-feed',
    }
  const given = cutting.compoundAngle
  const needed = flankAngle(feature, included)
  if (given === null || Math.abs(given - needed) < MINUTE) return null
  return {
    code: 'compound-angle',
    reason: say`flank feed of a V of ${degrees('angle', included)} needs the compound at ${degrees('angle', needed)} from parallel (${degrees('angle', 90 - needed)} from square), the job sets it to ${degrees('angle', given)}`,
    remedy: 'take compound out for this feature: the method implies the angle; or leave out method: flank-feed',
  }
}
