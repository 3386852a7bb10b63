import { stepTravel } from '../dials/travel.ts'
import { MOST_MOVES } from '../moves/bounds.ts'
import { biteOf, type Cuts } from '../moves/cuts.ts'
import { about, say } from '../phrase/say.ts'
import type { Length } from '../units/length.ts'
import type { Request, Sequenced } from './request.ts'

/** To a place, out of it, and what a slide at rest needs: once for each layer. Pecks go out between infeeds. */
const VISIT = 4
const PECK = 2

/** Says which of the two makes so many: places close together for a narrow tool, or thin infeeds. */
export function tooManyMoves(request: Request): Sequenced {
  const { cuts, units, lathe } = request
  const { places, spacing } = placesOf(cuts)
  const infeed = Math.max(infeedOf(cuts), stepTravel(lathe.crossFeed))
  const passes = Math.ceil(depthOf(cuts) / infeed)
  const visits =
    (cuts.style === 'plunge' || cuts.style === 'stairs') && cuts.layer !== null ? Math.ceil(cuts.depth / cuts.layer) : 1
  const show = (length: Length) => about('planned', length, units, units === 'inch' ? 4 : 3)
  const over = Math.max(1.5, (1.2 * places * (passes * PECK + visits * VISIT)) / MOST_MOVES)
  const reason = say`it would take more than ${MOST_MOVES} moves of the hand: ${places} places along the work, up to ${passes} infeeds at each; nobody follows so many without a slip`
  const wider = say`take a tool that needs a place only every ${show(spacing * over)}`
  const deeper = say`allow a larger infeed (infeed: ${show(infeed * over)})`
  return { ok: false, code: 'too-many-moves', reason, remedy: passes > places ? deeper : wider }
}

const placesOf = (cuts: Cuts): { readonly places: number; readonly spacing: Length } => {
  if (cuts.style === 'corner') return { places: 1, spacing: cuts.radius }
  if (cuts.style === 'stairs')
    return { places: cuts.places.length, spacing: (cuts.last - cuts.first) / Math.max(1, cuts.places.length - 1) }
  const spacing = cuts.style === 'steps' ? cuts.roughSpacing : (cuts.spacing ?? cuts.depth)
  return { places: Math.ceil((cuts.last - cuts.first) / spacing - 1e-9) + 1, spacing }
}

const depthOf = (cuts: Cuts): Length => (cuts.style === 'corner' ? cuts.radius : cuts.depth)

const infeedOf = (cuts: Cuts): Length =>
  cuts.style === 'corner'
    ? cuts.radius / Math.max(1, cuts.offsets.length)
    : (biteOf(cuts.infeed, 'peck' in cuts ? cuts.peck : null) ?? cuts.depth)
