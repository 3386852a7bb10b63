import type { Move, Operation } from '../moves/operation.ts'
import type { Mutant } from './mistakes.ts'

/** What goes wrong where the compound feeds a V down its flank, the cross-feed standing on a reading of its own. Turns in counts. */
export function downTheFlank(operation: Operation, down: number | null, inward: number | null): readonly Mutant[] {
  const { moves, angle } = operation
  if (!downASlant(operation)) return []
  const withMoves = (mistake: Mutant['mistake'], wrong: readonly Move[]): Mutant => ({
    mistake,
    operation: { ...operation, moves: wrong },
  })
  const turnedBack = moves.filter(({ action, slide }) => action !== 'go-past' || slide !== 'compound')
  return [
    ...(down === null ? [] : [withMoves('turn-less-down', less(moves, finishes, down))]),
    ...(inward === null ? [] : [withMoves('short-of-zero', less(moves, comesIn, inward))]),
    ...(turnedBack.length === moves.length ? [] : [withMoves('not-turned-back', turnedBack)]),
    { mistake: 'other-scale-zero', operation: { ...operation, angle: 90 - angle } },
  ]
}

/** The compound feeds, along its own slant: the cross-feed only brings the tool in and takes it out. */
export const downASlant = ({ moves }: Operation): boolean => moves.some(finishes)

const finishes = ({ action, slide, purpose }: Move): boolean =>
  action === 'feed-in' && slide === 'compound' && purpose === 'finish'

/** Its 0 goes by once a turn: the one before is taken for it, every time. */
const comesIn = ({ action, slide, purpose }: Move): boolean =>
  action === 'return' && slide === 'cross-feed' && purpose === 'approach'

const less = (moves: readonly Move[], wrong: (move: Move) => boolean, by: number): readonly Move[] =>
  moves.map((move) => (wrong(move) ? { ...move, count: move.count! - by } : move))
