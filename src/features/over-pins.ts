import { type Pin, stockPins } from '../handbook/pins.ts'
import type { Degrees } from '../units/dimension.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'

/**
 * A V by its size where it is measured: `width` at `diameter`, half of the included angle, flat at the root. pm,
 * degrees.
 */
export type VeeSize = {
  readonly diameter: Length
  readonly width: Length
  readonly halfAngle: Degrees
  readonly root: Length
}

/**
 * Over two opposed pins or balls in a V: M = OD − W/tan α + p(1 + 1/sin α), α half of the included angle. The center of
 * a pin is (p/2)/sin α above the vertex of the V. Plane geometry; with W = the pitch it is the three-wire formula of
 * sharp V threads. pm.
 */
export function overPinsInVee({ diameter, width, halfAngle }: Omit<VeeSize, 'root'>, pin: Length): Length {
  const { sin, tan } = ratios(halfAngle)
  return diameter - width / tan + pin * (1 + 1 / sin)
}

/**
 * Touches both flanks between root and surface, clears the floor, and stands proud of the surface. `width` is at the
 * surface here.
 */
export function pinSeatsInVee({ width, halfAngle, root }: Omit<VeeSize, 'diameter'>, pin: Length): boolean {
  const { sin, cos, tan } = ratios(halfAngle)
  const onFlanks = root < pin * cos && pin * cos < width
  const clearsFloor = pin * (1 / sin - 1) > root / tan
  const proud = pin * (1 + 1 / sin) > width / tan
  return onFlanks && clearsFloor && proud
}

/**
 * The stock pin that touches the flanks nearest to their middle, and stands proud of everything beside the V (`beside`:
 * largest diameter).
 */
export function pinForVee(units: Units, vee: VeeSize, beside: Length): Pin | null {
  const middle = (vee.width + vee.root) / 2
  const off = (pin: Pin): Length => Math.abs(pin.diameter * ratios(vee.halfAngle).cos - middle)
  const fit = stockPins(units).filter(
    ({ diameter }) => pinSeatsInVee(vee, diameter) && overPinsInVee(vee, diameter) > beside,
  )
  return fit.toSorted((a, b) => off(a) - off(b))[0] ?? null
}

/** Over two opposed pins that touch the bottom of a groove: M = bottom diameter + 2p, which is OD − 2h + 2p. pm. */
export const overPinsOnBottom = (bottom: Length, pin: Length): Length => bottom + 2 * pin

/**
 * The smallest stock pin that goes to the bottom of a groove (thinner than `opening`: a width, or twice a radius) and
 * stands well proud of everything beside it; if none stands well proud, the largest that stands proud at all.
 */
export function pinForBottom(units: Units, bottom: Length, opening: Length, beside: Length): Pin | null {
  const fit = stockPins(units).filter(
    ({ diameter }) => diameter < opening && overPinsOnBottom(bottom, diameter) > beside,
  )
  const well = fit.find(({ diameter }) => overPinsOnBottom(bottom, diameter) >= beside + wellProud(units))
  return well ?? fit.at(-1) ?? null
}

/** Over both pins together: 1/64 in or 0.4 mm each, enough for an anvil that is not quite square. */
const wellProud = (units: Units): Length => (units === 'inch' ? INCH / 32 : 0.8 * MM)

function ratios(halfAngle: Degrees): { sin: number; cos: number; tan: number } {
  const angle = (halfAngle * Math.PI) / 180
  return { sin: Math.sin(angle), cos: Math.cos(angle), tan: Math.tan(angle) }
}
