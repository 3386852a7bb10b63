import { stepTravel } from '../dials/travel.ts'
import { readable, type Scale } from '../lathe/lathe.ts'
import type { Length } from '../units/length.ts'

/**
 * The count nearest to a travel, rounded once. A tie leaves metal: `lower` if less travel leaves it, `higher` if more
 * does. The millionth of a step keeps a tie a tie after a division.
 */
export function countFor(scale: Scale, travel: Length, tie: 'lower' | 'higher'): number {
  const steps = travel / stepTravel(scale)
  const count = tie === 'lower' ? Math.ceil(steps - 0.5 - 1e-6) : Math.floor(steps + 0.5 + 1e-6)
  return count === 0 ? 0 : count
}

/** Lost motion in readable steps, rounded up. */
export const lostCounts = (scale: Scale): number =>
  scale.kind === 'readout' ? 0 : Math.ceil(scale.backlash / readable(scale) - 1e-9)

/** Counts in one turn of a dial. */
export const countsPerTurn = (scale: Scale): number | null =>
  scale.kind === 'readout' ? null : Math.round(scale.perTurn / readable(scale))

/** Counts between the marks that are easy to find: every tenth mark of a dial, every fiftieth step of a readout. */
export function roundCounts(scale: Scale): number {
  if (scale.kind === 'readout') return 50
  const perTurn = countsPerTurn(scale)!
  const tenMarks = Math.round(10 / scale.readTo)
  if (perTurn % tenMarks === 0) return tenMarks
  const fiveMarks = Math.round(5 / scale.readTo)
  return perTurn % fiveMarks === 0 ? fiveMarks : Math.round(1 / scale.readTo)
}

/**
 * A reading at least `travel` behind zero that is easy to find again: half a turn, a whole turn, or a round mark.
 * Returns a negative count.
 */
export function findableBehindZero(scale: Scale, travel: Length): number {
  const need = Math.ceil(travel / stepTravel(scale) - 1e-9)
  const turn = countsPerTurn(scale)
  if (turn !== null && turn % 2 === 0 && need <= turn / 2 && turn / 2 <= need * 4) return -turn / 2
  if (turn !== null && need <= turn && turn <= need * 3) return -turn
  const round = roundCounts(scale)
  return -Math.ceil(need / round) * round
}

/** A round mark before `target` by more than the lost motion. */
export function pastCount(scale: Scale, target: number): number {
  const round = roundCounts(scale)
  return (
    Math.floor((target - lostCounts(scale) - Math.round(1 / (scale.kind === 'dial' ? scale.readTo : 1))) / round) *
    round
  )
}

/** Readable steps of a take-up: the lost motion plus five marks. */
export const takeUpCounts = (scale: Scale): number =>
  lostCounts(scale) + (scale.kind === 'dial' ? Math.round(5 / scale.readTo) : 0)
