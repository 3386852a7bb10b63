import { INCH, type Length, MM } from '../units/length.ts'

export type SpindleRequest = {
  /** ft/min or m/min, before the factor. */
  readonly cuttingSpeed: number
  readonly speedUnits: 'ft/min' | 'm/min'
  /** The largest diameter that is cut. */
  readonly diameter: Length
  /** The part of the plain turning speed that a form tool may run at, e.g. 0.5. */
  readonly factor: number
  /** rpm of the lathe, at least one, in any order. */
  readonly speeds: readonly number[]
}

export type SpindleChoice = {
  /** rpm by the formula, after the factor. */
  readonly wanted: number
  readonly rpm: number
  /** Every speed of the lathe is higher than wanted by more than `NEAR_ENOUGH`; `rpm` is then the lowest. */
  readonly tooFast: boolean
}

/**
 * A speed up to this many times the wanted speed still counts as that speed: cutting speeds are published as round
 * figures and ranges. 90 ft/min for mild steel (bench-lathe operator's manual) is the middle of 80 to 100 (machine-tool
 * course quick reference, SFM table), a tenth to either side.
 */
const NEAR_ENOUGH = 1.1

/**
 * rpm = 12·CS/(π·D), inches, or 1000·V/(π·D), millimeters (Jones, Turning and Boring, 1914), in its exact form; then
 * the nearest speed of the lathe that is not higher: a form tool run too fast chatters. If all are higher, the lowest,
 * if that is near enough. Throws without a speed or a diameter.
 */
export const spindleSpeed = (request: SpindleRequest): SpindleChoice => {
  const { cuttingSpeed, speedUnits, diameter, factor, speeds } = request
  if (speeds.length === 0) throw new Error('spindleSpeed: no spindle speeds')
  if (!(diameter > 0)) throw new Error(`spindleSpeed: diameter ${diameter}`)
  const rotation = Math.PI * diameter
  const travel = speedUnits === 'ft/min' ? cuttingSpeed * 12 * INCH : cuttingSpeed * 1000 * MM
  const wanted = (factor * travel) / rotation
  const allowed = speeds.filter((rpm) => rpm <= wanted)
  return allowed.length > 0
    ? { wanted, rpm: Math.max(...allowed), tooFast: false }
    : { wanted, rpm: Math.min(...speeds), tooFast: Math.min(...speeds) > NEAR_ENOUGH * wanted }
}
