import { INCH, type Length, MM, type Units } from '../units/length.ts'

/** A pin (drill rod, silver steel) or a ball as it is sold, and its name in a shop. */
export type Pin = { readonly diameter: Length; readonly label: string }

/**
 * Stock diameters of one system of units, ascending. Inch: drill rod and balls by 64ths to 1/2, by 32nds to 1, by 16ths
 * to 2. Metric: silver steel and balls by halves to 10 mm, whole millimeters to 25, then each fifth. US and European
 * trade sizes, from memory.
 */
export const stockPins = (units: Units): readonly Pin[] => (units === 'inch' ? INCH_PINS : METRIC_PINS)

const sixtyFourths = (from: number, to: number, by: number): number[] =>
  Array.from({ length: (to - from) / by + 1 }, (_, i) => from + i * by)

const INCH_PINS: readonly Pin[] = [
  ...sixtyFourths(2, 32, 1),
  ...sixtyFourths(34, 64, 2),
  ...sixtyFourths(68, 128, 4),
].map((count) => ({ diameter: (count * INCH) / 64, label: `${fraction(count, 64)} in` }))

const METRIC_PINS: readonly Pin[] = [
  ...Array.from({ length: 19 }, (_, i) => 1 + i / 2),
  ...Array.from({ length: 15 }, (_, i) => 11 + i),
  30,
  35,
  40,
  45,
  50,
].map((size) => ({ diameter: size * MM, label: `${size} mm` }))

/**
 * Radii of a stock set of radius gauges, ascending: 64ths to 17/64, 32nds to 1/2; quarter millimeters to 7, halves to
 * 25. From memory.
 */
export const radiusGauges = (units: Units): readonly Length[] => (units === 'inch' ? INCH_RADII : METRIC_RADII)

const INCH_RADII = [...sixtyFourths(2, 17, 1), ...sixtyFourths(18, 32, 2)].map((count) => (count * INCH) / 64)
const METRIC_RADII = [
  ...Array.from({ length: 25 }, (_, i) => (1 + i / 4) * MM),
  ...Array.from({ length: 36 }, (_, i) => (7.5 + i / 2) * MM),
]

function fraction(over: number, under: number): string {
  if (under === 1) return String(over)
  if (over % 2 === 0) return fraction(over / 2, under / 2)
  const whole = Math.floor(over / under)
  return `${whole === 0 ? '' : `${whole} `}${over % under}/${under}`
}
