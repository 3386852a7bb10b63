import type { Budgeted } from '../budget/budgeted.ts'
import { about, joinedBy, say } from '../phrase/say.ts'
import type { Warning } from './plan.ts'

type SideFeedWarning = Omit<Warning, 'feature'>

import type { Lathe } from '../lathe/lathe.ts'
import type { Instrument, Operation } from '../moves/operation.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'

/**
 * The real cost of moving along by the carriage: limits that depend on the eye, or a width that a coarse dial cannot
 * show.
 */
export function sideFeedWarnings(
  units: Units,
  lathe: Lathe,
  operation: Operation,
  budgeted: readonly Budgeted[],
): SideFeedWarning[] {
  if (operation.moves.some(({ place }) => place !== undefined)) return [limitsByEye(units, lathe, operation, budgeted)]
  return coarseDial(units, lathe, operation, budgeted)
}

const ALONG: Partial<Record<Instrument, string>> = {
  width: 'width',
  root: 'flat at the root',
  near: 'near edge',
  far: 'far edge',
  center: 'center',
}

function limitsByEye(units: Units, lathe: Lathe, operation: Operation, budgeted: readonly Budgeted[]): SideFeedWarning {
  const show = (length: Length) => about('planned', length, units)
  const lines = budgeted.flatMap(({ id, low, high, limits, verdict }) => {
    const name = ALONG[id]
    if (name === undefined || limits === null) return []
    const holds = verdict === 'holds' ? 'in tolerance' : 'MAY MISS TOLERANCE'
    return [say`${name} ${show(low)} to ${show(high)}, limits ${show(limits[0])} to ${show(limits[1])}, ${holds}`]
  })
  const which =
    lines.length === 0 ? 'No limit of the drawing rests on that' : say`On that rest: ${joinedBy('; ', lines)}`
  const wrong = say`The carriage is brought to the lines by eye, within ${show(lathe.accuracy.layout)} of each. ${which}`
  const remedy = 'by an indicator on the carriage, or by the compound, it is nearer'
  return {
    code: 'rests-on-the-eye',
    wrong,
    say: say`${wrong}; ${remedy}.`,
    origin: operation.origin,
    remedy,
  }
}

/** A width that is off by more than a thousandth, or a fortieth of a millimeter, is reported. */
function coarseDial(
  units: Units,
  lathe: Lathe,
  { moves, dimensions, origin }: Operation,
  budgeted: readonly Budgeted[],
): SideFeedWarning[] {
  const { carriage } = lathe
  const byDial = moves.some(({ slide, action }) => slide === 'carriage' && action === 'take-up')
  const aim = dimensions.find(({ id }) => id === 'width')?.aim
  const width = budgeted.find(({ id }) => id === 'width')?.planned
  if (!byDial || carriage?.kind !== 'dial' || aim === undefined || width === undefined) return []
  const off = Math.abs(width - aim)
  if (!(off > (units === 'inch' ? INCH / 1000 : MM / 40))) return []
  const show = (length: Length) => about('planned', length, units)
  // Marks of a dial in the other system are no whole thousandths, or hundredths.
  const odd = carriage.graduation % (units === 'inch' ? INCH / 1000 : MM / 100) !== 0
  const foreign = odd ? (units === 'inch' ? 4 : 3) : undefined
  const spacing = about('planned', carriage.graduation, units, foreign)
  const remedy = 'by the compound, by an indicator on the carriage, or with a tool ground to width it is nearer'
  const side = width > aim ? 'over' : 'under'
  const wrong = say`The marks of the carriage's dial are ${spacing} apart: the width comes out ${show(width)}, ${show(off)} ${side} what the drawing aims at`
  return [
    {
      code: 'coarse-carriage',
      wrong,
      say: say`${wrong}; ${remedy}.`,
      origin,
      remedy,
    },
  ]
}
