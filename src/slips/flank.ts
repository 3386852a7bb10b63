import type { Move, Operation } from '../moves/operation.ts'
import type { Mutant } from './mistakes.ts'
import { swungTo } from './swung.ts'

/** Mistakes when the compound feeds a V down its flank with the cross-feed at a reading of its own. Turns in counts. */
export function downTheFlank(operation: Operation, down: number | null, inward: number | null): readonly Mutant[] {
  const { moves, angle } = operation
  if (!downASlant(operation)) return []
  const withMoves = (mistake: Mutant['mistake'], wrong: readonly Move[]): Mutant => ({
    mistake,
    operation: { ...operation, moves: wrong },
  })
  const turnedBack = moves.filter(({ action, slide }) => action !== 'go-past' || slide !== 'compound')
  const short = down === null ? null : turnShort(moves, down)
  return [
    ...(down === null ? [] : [withMoves('turn-less-down', reducedBy(moves, finishes, down))]),
    ...(inward === null ? [] : [withMoves('short-of-zero', reducedBy(moves, crossFeedsIn, inward))]),
    ...(turnedBack.length === moves.length ? [] : [withMoves('not-turned-back', turnedBack)]),
    ...(short === null ? [] : [withMoves('back-turn-short', short)]),
    { mistake: 'other-scale-zero', operation: swungTo(90 - angle, operation) },
  ]
}

/** The compound feeds along its own slant: the cross-feed brings the tool in, and may finish straight in from there. */
export const downASlant = ({ moves }: Operation): boolean => moves.some(finishes)

const finishes = ({ action, slide, purpose }: Move): boolean =>
  action === 'feed-in' && slide === 'compound' && (purpose === 'finish' || purpose === 'approach')

/** The 0 of the dial passes once a turn: the one before is mistaken for it, every time. */
const crossFeedsIn = ({ action, slide, purpose }: Move): boolean =>
  action === 'return' && slide === 'cross-feed' && purpose === 'approach'

/**
 * Wound back past 0 once too few, to the right mark a turn short of the reading: all that this run goes forward from
 * there ends a turn further. Made at the first run that is wound back by more than a turn.
 */
function turnShort(moves: readonly Move[], turn: number): readonly Move[] | null {
  let at: number | null = null
  const back = moves.findIndex(({ action, slide, count }) => {
    if (slide !== 'compound' || typeof count !== 'number') return false
    const from = at
    at = count
    return action === 'go-past' && from !== null && from - count > turn
  })
  if (back < 0) return null
  const again = moves.findIndex(({ action, slide }, i) => i > back && action === 'go-past' && slide === 'compound')
  const end = again < 0 ? moves.length : again
  return moves.map((move, i) =>
    i >= back && i < end && move.slide === 'compound' && typeof move.count === 'number'
      ? { ...move, count: move.count + turn }
      : move,
  )
}

const reducedBy = (moves: readonly Move[], wrong: (move: Move) => boolean, by: number): readonly Move[] =>
  moves.map((move) => (wrong(move) ? { ...move, count: move.count! - by } : move))
