import type { Check, OverPins } from '../moves/inspection.ts'
import type { Length } from '../units/length.ts'
import { besideOf, bottomLimits, type Inspected, overPinsWay } from './inspection.ts'
import { overPinsOnBottom, pinForBottom } from './over-pins.ts'

/**
 * Over two opposed pins that touch the bottom of a form; null if no stock pin fits through `opening` and stands proud.
 * pm.
 */
export function overBottomPins(
  inspected: Inspected,
  opening: Length,
  where: string,
): (Check & { over: OverPins }) | null {
  const { bench, draft, sizes } = inspected
  const bottom = sizes.planned('bottomDiameter')
  if (bottom === null) return null
  const pin = pinForBottom(bench.units, bottom, opening, besideOf(inspected, draft.region.from, draft.region.to))
  if (pin === null) return null
  const limits = bottomLimits(inspected)
  return {
    id: 'overPins',
    label: 'over two pins',
    unit: 'length',
    ...overPinsWay(bench, [
      'micrometer over two opposed ',
      { size: pin.diameter, label: pin.label },
      ` balls or pins ${where}`,
    ]),
    planned: overPinsOnBottom(bottom, pin.diameter),
    limits: limits === null ? null : [limits[0] + 2 * pin.diameter, limits[1] + 2 * pin.diameter],
    over: { pin: { size: pin.diameter, label: pin.label }, more: 2 * pin.diameter, flanks: null },
    pin: pin.diameter,
    pair: null,
  }
}
