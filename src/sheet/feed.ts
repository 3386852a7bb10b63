import type { Slide } from '../moves/operation.ts'
import { paceOn, seconds } from '../phrase/pace.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { scaleOf } from '../plan/scale.ts'
import type { Scene } from './scene.ts'

/** How fast the hand turns this dial for the feed of the sheet. */
export const feedOn = ({ plan, feature, units }: Scene, slide: Slide): Phrase => {
  const scale = scaleOf(plan, slide)
  if (scale === null) return ['that far']
  return paceOn(scale, (feature.pace.feed * feature.spindle.rpm) / 60, units)
}

/** The slide that goes into the work: the compound down a flank, otherwise the cross-feed. */
export const feedingSlide = ({ feature }: Scene): Slide =>
  feature.operation.moves.find(({ action, purpose }) => action === 'feed-in' && purpose === 'rough')?.slide ??
  'cross-feed'

/** What a finishing cut is held at its bottom; nothing where the tool goes on at once, from place to place. */
export const restAfter = ({ feature, move, turning }: Scene): Phrase => {
  const { rest } = feature.pace
  const finishes = move.action === 'feed-in' && move.purpose === 'finish' && turning
  return rest === null || !finishes || feature.operation.cusp !== undefined
    ? []
    : ['; rest\u00a0', seconds(rest.seconds)]
}
