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
export function flankCuts(bench: Bench, { cutting }: VGrooveFeature, tool: VeeTool, shape: Shape): FlankCuts {
  const { depth, t } = shape
  const first = depth * t
  const infeed = cutting.infeed ?? defaultVeeInfeed(bench.units)
  const leave = leftFor(bench.units, { ...cutting, infeed }, depth)
  return {
    style: 'flank',
    slope: t,
    first,
    last: first + Math.max(0, shape.root - tool.nose),
    nose: tool.nose,
    spacing: tool.nose > 0 ? tool.nose * 0.9 : null,
    depth,
    roughDepths: leave > 0 ? shrinkingInfeeds(roughDepthsTo, depth - leave, infeed, tool.nose, t / 2) : [],
    infeed,
  }
}

/** Half the included angle from square. At any other angle the tool would not slide along the flank. */
export const flankAngle = (included: number): number => 90 - included / 2

/**
 * A compound that the job sets to another angle contradicts the method, and so does another slide for the side feed; a
 * minute of angle does not show on a swivel scale.
 */
export function flankRefusal({ cutting }: VGrooveFeature, included: number): Refusal | null {
  if (cutting.sideFeed !== 'compound')
    return {
      code: 'side-feed',
      reason: say`flank feed is made by the compound alone, and side-feed: ${cutting.sideFeed} is asked for`,
      remedy: 'leave side-feed out for this feature, or leave out method: flank-feed',
    }
  const given = cutting.compoundAngle
  const needed = flankAngle(included)
  if (given === null || Math.abs(given - needed) < 1 / 60) return null
  return {
    code: 'compound-angle',
    reason: say`flank feed of a V of ${degrees('angle', included)} needs the compound at ${degrees('angle', needed)} from parallel (${degrees('angle', included / 2)} from square), the job sets it to ${degrees('angle', given)}`,
    remedy: 'take compound out for this feature: the method implies the angle; or leave out method: flank-feed',
  }
}
