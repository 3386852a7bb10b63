import type { Phrase } from '../phrase/phrase.ts'
import { called, exact, say } from '../phrase/say.ts'
import { type Length, perUnit, type Units } from '../units/length.ts'

/** All in pm of reading. */
export type Slack = { readonly graduation: Length; readonly perTurn: Length; readonly backlash: Length }

/**
 * A nut with a whole turn of play on its screw has hardly a thread left in it, and the collars of the screw add far
 * less than another turn: over one turn is questioned, over three is refused. Common practice, no source.
 */
export const MOST_TURNS = 3

/** What is wrong with it, and what was probably meant: the number as marks, or as thousandths. */
export function muchBacklash(
  { graduation, perTurn, backlash }: Slack,
  units: Units,
): { message: Phrase; hint: Phrase } {
  const show = (length: Length) => exact('backlash', length, units)
  const plain = (length: Length) =>
    called('backlash', String(Number((length / perUnit(units)).toFixed(6))), length, units)
  const counted = backlash / perUnit(units)
  const fits = (length: Length): boolean => length >= graduation && length <= perTurn / 2
  const [marks, thousandths] = [counted * graduation, backlash / 1000]
  const own = say`give the lost motion in ${units === 'inch' ? 'inches' : 'millimeters'} as this dial shows it, less than a turn`
  const turns = Number((backlash / perTurn).toFixed(2))
  const message = say`a backlash of ${show(backlash)} is ${turns} turns of a screw that moves ${show(perTurn)} a turn`
  if (Number.isInteger(counted) && fits(marks))
    return { message, hint: say`if ${counted} marks were counted, write ${plain(marks)}; ${own}` }
  if (units === 'inch' && fits(thousandths))
    return { message, hint: say`if it is in thousandths, write ${plain(backlash)} thou; ${own}` }
  return { message, hint: own }
}
