import { travelOf } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import type { Slide } from '../moves/operation.ts'
import type { Phrase, Prose } from '../phrase/phrase.ts'
import { about, say } from '../phrase/say.ts'
import type { Code, FeaturePlan } from '../plan/plan.ts'
import type { Length, Units } from '../units/length.ts'
import type { Shop } from './measured.ts'
import { summedError } from './table.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>
type Short = { readonly code: Code; readonly reason: Prose; readonly remedy: Prose }

/**
 * A bottom that is large by whole turns of the roughing dial: either the zero is off by that much, or the roughing stopped a turn short. The second is
 * the more common mistake (common practice, no source). Then the zero is right, and readings moved by a turn would cut a turn too deep.
 * `before`: how many steps the sheet has before those of this feature.
 */
export const turnsShort = (
  units: Units,
  before: number,
  shop: Shop,
  feature: Planned,
  bottom: Length,
): Short | null => {
  const turn = turnOnDiameter(shop)
  const off = bottom - shop.stop.expected
  const most = summedError(feature.budget, false)
  if (turn === null || off <= most) return null
  const turns = Math.round(off / turn)
  if (turns < 1 || Math.abs(off - turns * turn) > most) return null
  const show = (length: Length) => about('planned', length, units)
  const whole = say`${COUNTED[turns] ?? turns} whole ${turns === 1 ? 'turn' : 'turns'}`
  return {
    code: 'turn-short',
    reason: say`the bottom measures ${show(off)} more than expected, and ${whole} of the ${shop.stop.roughedBy} ${turns === 1 ? 'makes' : 'make'} ${show(turns * turn)}: steps corrected for a zero that is off by that would cut too deep if the zero is right`,
    remedy: say`measure again; if it measures the same, the roughing stopped ${whole} of the ${shop.stop.roughedBy} short: ${again(before, shop, whole)}, and measure again; if nothing is cut by them, it is the zero that is off: touch off again`,
  }
}

const COUNTED: readonly (string | undefined)[] = [undefined, 'one', 'two', 'three', 'four', 'five']

/** One turn of the dial on the diameter, pm. Of a compound only the part of it that goes into the work. A readout has no turns. */
const turnOnDiameter = ({ lathe, operation, stop }: Shop): Length | null => {
  const scale: Scale = stop.roughedBy === 'cross-feed' ? lathe.crossFeed : lathe.compound.scale
  if (scale.kind === 'readout') return null
  const travel = travelOf(scale, scale.perTurn)
  return 2 * travel * (stop.roughedBy === 'cross-feed' ? 1 : Math.sin((operation.angle * Math.PI) / 180))
}

/** The steps that come back from the stop, and the roughing after them. */
const again = (before: number, shop: Shop, whole: Phrase): Phrase => {
  const { operation, stop } = shop
  const { moves } = operation
  const step = (index: number): number => before + index + 1
  const first = moves.findIndex(({ action, slide, purpose }, i) =>
    stop.roughedBy === 'compound'
      ? action === 'feed-in' && slide === 'compound' && purpose === 'rough'
      : i > 0 && moves[i - 1]!.action === 'start',
  )
  const rough = say`steps ${step(first)}\u00a0to\u00a0${step(stop.at)} again as the sheet has them (the dials are right)`
  const to = moves.findIndex(({ action }, i) => i > stop.at && action === 'feed-in') - 1
  if (stop.roughedBy === 'compound') {
    const back = moves.findIndex(({ slide }, i) => i > stop.at && slide === 'compound')
    return say`do steps ${step(stop.at + 1)} to ${step(to)}, but at step ${step(back)} stop at the same mark ${whole} sooner, because the compound is that much further back than on the sheet; then do ${rough}`
  }
  const near = say`the tool must then be as near the work as before step ${step(first)}, not a whole turn further out`
  const side = sideOf(shop, first)
  // Beside a face the slide goes back from it before the spindle is started.
  const started = moves.findIndex(({ action }, i) => i > stop.at && action === 'start')
  const join = started === stop.at + 2 ? 'and' : 'to'
  const back = say`do steps ${step(stop.at + 1)} ${join} ${step(started)} (${near})`
  if (side === null) return say`${back}; then do ${rough}`
  if (comesBackTo(shop, side, first, to + 1))
    return say`do steps ${step(stop.at + 1)} to ${step(to)} (${near}); then do ${rough}`
  const [free, held] = side === 'carriage' ? ['unlock the carriage; ', ', and lock it'] : ['', '']
  return say`${back}; ${free}bring the ${side} back past where it was before step ${step(first)} by more than the backlash, and forward onto it${held}; then do ${rough}`
}

/** The slide that moves from place to place by its dial while roughing; null if there is none. */
const sideOf = ({ operation, stop }: Shop, first: number): Slide | null =>
  operation.moves.find(
    ({ slide, count }, i) => i >= first && i < stop.at && slide !== 'cross-feed' && typeof count === 'number',
  )?.slide ?? null

/** Can the roughing begin where the steps after the stop leave the tool? It must be where the roughing began, or go forward to its first place. */
const comesBackTo = (shop: Shop, side: Slide, first: number, finish: number): boolean => {
  const { moves } = shop.operation
  const cuts = moves.findIndex(({ action, slide }, i) => i >= first && action === 'feed-in' && slide === 'cross-feed')
  const begins = moves
    .slice(first, cuts)
    .find(({ action, slide, count }) => action === 'shift' && slide === side && count != null)
  const stands = standsAt(shop, side, finish)
  return begins === undefined ? stands === standsAt(shop, side, first) : stands <= begins.count!
}

/** Its reading just before a move. */
const standsAt = ({ operation }: Shop, side: Slide, index: number): number =>
  operation.moves.slice(0, index).findLast(({ slide, count }) => slide === side && typeof count === 'number')?.count ??
  0
