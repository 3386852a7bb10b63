import type { Move } from '../moves/operation.ts'
import type { Group } from './sheet.ts'

/** The part of the work that each move belongs to: it gives the eye places to come back to on the sheet. */
export const groupsOf = (moves: readonly Move[]): Group[] => {
  const last = lastCut(moves)
  const groups: Group[] = []
  for (const [i, move] of moves.entries()) {
    const before = groups.at(-1) ?? 'set up'
    groups.push(i > last ? 'end' : move.action === 'stop' && !isToMeasure(moves, i) ? before : next(before, move))
  }
  return groups
}

/** Or else only to bring the tool in, where turns are counted. */
const isToMeasure = (moves: readonly Move[], stop: number): boolean =>
  moves.slice(stop).find(({ action }) => action === 'measure' || action === 'start')?.action === 'measure'

/**
 * The group of a move, from the group of the move before it: a move that neither cuts nor measures stays in that group.
 */
const next = (group: Group, move: Move): Group => {
  if (move.action === 'stop' || move.purpose === 'clear-to-measure') return group === 'set up' ? group : 'measure'
  if (finishing(move)) return 'finish'
  if (group === 'set up') return move.action === 'start' || cutting(move) ? 'rough' : group
  if (!cutting(move)) return group
  if (move.purpose === 'rough') return 'rough'
  return group === 'measure' ? 'finish' : group
}

const finishing = (move: Move): boolean =>
  move.purpose === 'finish' || move.purpose === 'take-out-floor' || move.purpose === 'square-shoulder'

const cutting = (move: Move): boolean => move.action === 'feed-in' || move.action === 'feed-across'

/** The last cut and the back-out that follows it, including the lock of the carriage before that. */
const lastCut = (moves: readonly Move[]): number => {
  const cut = moves.findLastIndex(cutting)
  const last = moves[cut + 1]?.action === 'lock' ? cut + 1 : cut
  return moves[last + 1]?.action === 'back-out' ? last + 1 : last
}
