import type { Phrase } from '../phrase/phrase.ts'
import { exact, say } from '../phrase/say.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'

/** A diameter as drawn: its limits, or the nominal twice. */
export type Drawn = { readonly nominal: Length; readonly limits: readonly [low: Length, high: Length] | null }

/**
 * How far a measured diameter may differ from the drawn one before it is questioned: a twentieth of it, but never under
 * 0.030 in (work turned undersize to clean it up) nor over 1/8 in. Common practice, no source.
 */
const roomOf = (drawn: Length): Length => Math.min(INCH / 8, Math.max(0.03 * INCH, drawn / 20))

const outside = ({ nominal, limits }: Drawn, measured: Length): Length => {
  const [low, high] = limits ?? [nominal, nominal]
  return Math.max(low - measured, measured - high, 0)
}

/** How far it measures outside the drawn limits; 0 if there is nothing to question. */
export function measuredOff(drawn: Drawn, measured: Length): Length {
  const off = outside(drawn, measured)
  return off > roomOf(drawn.nominal) ? off : 0
}

/**
 * Under half of what is drawn, or over twice: nobody turns work from that, so it is a mistake. Common practice, no
 * source.
 */
export const isSlip = (drawn: Drawn, measured: Length): boolean =>
  measuredOff(drawn, measured) > 0 && (measured > 2 * drawn.nominal || measured < drawn.nominal / 2)

/** What was probably meant, as the object of "write", and what went wrong; null if no guess fits. */
export function likelyMeasured(drawn: Drawn, measured: Length, units: Units): Phrase | null {
  const near = (length: Length): boolean => outside(drawn, length) <= drawn.nominal / 20
  const show = (length: Length) => exact('stock', Math.round(length), units)
  const number = (value: number) => Number(value.toFixed(5))
  if (near((measured * INCH) / MM)) return say`${number(measured / MM)} in if it was measured in inches`
  if (near((measured * MM) / INCH)) return say`${number(measured / INCH)} mm if it was measured in millimeters`
  const shift = [10, 100, 1000].flatMap((by) => [measured * by, measured / by]).find(near)
  if (shift !== undefined) return say`${show(shift)} if the point has slipped`
  return near(2 * measured) ? say`${show(2 * measured)} if a radius was measured` : null
}
