import { travelAt } from '../dials/travel.ts'
import { length } from '../phrase/figure.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import { scaleOf } from '../plan/scale.ts'
import { perUnit } from '../units/length.ts'
import type { Scene } from './scene.ts'
import { placeOf } from './scene.ts'

/** What a move does to the work, from its readings and its replay. */
export const effectOf = (scene: Scene): Phrase => {
  const { action, purpose, slide } = scene.move
  switch (action) {
    case 'take-up':
      return ['takes up backlash']
    case 'feed-in':
      return feedIn(scene)
    case 'back-out':
      return backOut(scene)
    case 'shift':
    case 'move-carriage':
      return along(scene)
    case 'go-past':
      return ['more than the backlash']
    case 'return':
      return slide === 'cross-feed' ? inBeforeFeed(scene) : ['backlash taken up']
    case 'feed-across':
      if (scene.move.place !== undefined) return []
      return [purpose === 'take-out-floor' ? 'cleans the bottom' : 'feeds across the floor']
    default:
      return []
  }
}

const feedIn = (scene: Scene): Phrase => {
  const { move, feature } = scene
  if (feature.edge.shape === 'corner') return cornerToGo(scene)
  const { deep } = placeOf(scene, scene.after)
  if (deep < 0) return [size(scene, 'clearance', -deep), ' clear of the work']
  const across = feature.operation.surface - 2 * deep
  if (move.slide === 'compound' && placeOf(scene, scene.before).deep === deep) return along(scene)
  return [size(scene, 'depth', deep), ' deep, ', size(scene, 'diameter', across), ' dia']
}

/**
 * The cross-feed comes in to its reading before the compound feeds: the machinist must know that nothing is cut yet.
 */
const inBeforeFeed = (scene: Scene): Phrase => {
  if (scene.move.purpose !== 'approach') return []
  const { deep } = placeOf(scene, scene.after)
  const clear = scene.feature.trace.clearance[scene.index] ?? -deep
  return deep < 0 && clear > 0 ? [size(scene, 'clearance', roundedDown(scene, clear)), ' clear of the work'] : []
}

/** Zero on both dials is the finished corner, so the effect is the distance left to it. */
const cornerToGo = (scene: Scene): Phrase => {
  const { deep, along } = placeOf(scene, scene.after)
  const left = toGoOnDial(scene, scene.move.slide === 'cross-feed' ? -deep : -along)
  if (left === 0) return ['finished size']
  return [size(scene, 'along', Math.abs(left)), left > 0 ? ' to go' : ' past']
}

/** The distance left, as this dial can show it: the tips touch a little early, by less than its marks. */
const toGoOnDial = ({ plan, move }: Scene, left: number): number => {
  const scale = move.slide === undefined ? null : scaleOf(plan, move.slide)
  const step = scale === null ? 1 : travelAt(scale, 1)
  return Math.round(left / step) * step
}

const backOut = (scene: Scene): Phrase => {
  const clear = scene.feature.trace.clearance[scene.index]
  if (scene.move.purpose === 'clear-to-measure') return ['room for the hands']
  if (scene.move.purpose === 'square-shoulder' && scene.feature.edge.shape === 'square') return ['squares the shoulder']
  // Beside the face that the tool has just touched there is nothing above it to clear.
  if (scene.previous?.slide === 'compound' && scene.previous.action === 'zero' && scene.feature.edge.shape !== 'corner')
    return []
  if (clear === undefined || clear <= 0) return []
  return ['clears by ', size(scene, 'clearance', roundedDown(scene, clear))]
}

/**
 * A clearance is a promise: never rounded up. To a thousandth of an inch, or a hundredth of a millimeter; finer if that
 * would be zero.
 */
const roundedDown = (scene: Scene, clear: number): number => {
  const usual = perUnit(scene.units) / (scene.units === 'inch' ? 1000 : 100)
  const step = [usual, usual / 10, usual / 100, usual / 1000].find((each) => clear >= each) ?? usual
  return Math.floor(clear / step + 1e-6) * step
}

const along = (scene: Scene): Phrase => {
  const { place } = scene.move
  const moved = place === undefined ? placeOf(scene, scene.after).along : place - scene.feature.trace.zero.fromEnd
  if (Math.abs(moved) < 1) return ['tool at its zero']
  return moved > 0
    ? ['shift ', size(scene, 'along', moved), ' toward the headstock']
    : ['tool ', size(scene, 'along', -moved), ' short of 0']
}

const size = (scene: Scene, role: Figure['role'], value: number): Figure => length(role, value, scene.units)
