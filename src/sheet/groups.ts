import type { Move } from '../moves/operation.ts'
import type { Group } from './sheet.ts'

/** Which part of the work each move belongs to: gives the eye places to come back to on the sheet. */
export const groupsOf = (moves: readonly Move[]): Group[] => {
  const last = lastCut(moves)
  let group: Group = 'set up'
  let started = false
  return moves.map((move, i) => {
    if (i > last) return (group = 'end')
    if (!started && move.action !== 'start' && !cutting(move)) return group
    started = true
    if (move.action === 'stop' || move.purpose === 'clear-to-measure') return (group = 'measure')
    if (group === 'measure' && cutting(move)) return (group = move.purpose === 'rough' ? 'rough' : 'finish')
    if (group === 'measure' && !finishing(move)) return group
    if (finishing(move)) return (group = 'finish')
    if (group === 'finish' && move.purpose !== 'rough') return group
    return (group = 'rough')
  })
}

const finishing = (move: Move): boolean =>
  move.purpose === 'finish' || move.purpose === 'take-out-floor' || move.purpose === 'square-shoulder'

const cutting = (move: Move): boolean => move.action === 'feed-in' || move.action === 'feed-across'

/** The last cut and the back-out that follows it. */
const lastCut = (moves: readonly Move[]): number => {
  const last = moves.findLastIndex(cutting)
  return moves[last + 1]?.action === 'back-out' ? last + 1 : last
}
