import type { Prose } from '../phrase/phrase.ts'
import { about, say } from '../phrase/say.ts'
import type { Code } from '../plan/plan.ts'
import type { Length, Units } from '../units/length.ts'
import type { Shop } from './measured.ts'
import type { Taken } from './remaining.ts'

type Nonsense = { readonly code: Code; readonly reason: Prose; readonly remedy: Prose }

/** A size that nothing on this part can have: no moves are given for it. */
export const senseless = (units: Units, shop: Shop, { bottom, width }: Taken): Nonsense | null => {
  const { operation, stop } = shop
  const show = (length: Length) => about('planned', length, units)
  const said = (what: string, is: Length, expected: Length, why: Prose): Nonsense => ({
    code: 'no-size',
    reason: say`${what} is given as ${show(is)}, and ${why}`,
    remedy: say`${otherUnits(is, expected, units)}measure again: ${show(expected)} is expected`,
  })
  if (bottom >= operation.surface)
    return said('the bottom diameter', bottom, stop.expected, say`the outside measures ${show(operation.surface)}`)
  if (isFactor(stop.expected / bottom))
    return said('the bottom diameter', bottom, stop.expected, 'that is far under what was roughed')
  const wide = operation.dimensions.find(({ id }) => id === 'width')?.aim
  if (width === null || wide === undefined || (width <= 3 * wide && !isFactor(wide / width))) return null
  return said('the width', width, wide, say`the drawing wants ${show(wide)}`)
}

/** An inch is 25.4 mm: a size typed in the other units is wrong by that factor, apart from the difference that was measured. */
const isFactor = (ratio: number): boolean => ratio > 25.4 / 1.25 && ratio < 25.4 * 1.25

const otherUnits = (is: Length, expected: Length, units: Units): Prose => {
  if (!isFactor(is / expected) && !isFactor(expected / is)) return ''
  return units === 'inch' ? 'is that in mm? the job is in inches; ' : 'is that in inches? the job is in mm; '
}
