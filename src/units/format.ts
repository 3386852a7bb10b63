import { INCH, type Length, perUnit, type Units } from './length.ts'

/**
 * Fewest and most decimal places on a sheet: thousandths to hundred-thousandths of an inch, hundredths of a mm to 0.1
 * µm.
 */
const DIGITS = { inch: { fewest: 3, most: 5 }, mm: { fewest: 2, most: 4 } } as const

/**
 * A length as printed: inches as shops write them (`.125`, `1.500`), millimeters as `0.50`. Rounds half away from zero.
 */
export function formatLength(length: Length, units: Units, options: { readonly digits?: number } = {}): string {
  const digits = options.digits ?? DIGITS[units].fewest
  const text = formatDecimal(length, perUnit(units), digits)
  return units === 'inch' && digits > 0 ? text.replace(/^(-?)0\./, '$1.') : text
}

/** A difference between two lengths: with the usual digits, or with as many more as it needs not to print as zero. */
export function formatDifference(length: Length, units: Units, options: { readonly digits?: number } = {}): string {
  const usual = options.digits ?? DIGITS[units].fewest
  // A picometer is .00000000004 in.
  for (let digits = usual; digits <= 11; digits++) {
    const text = formatLength(length, units, { digits })
    if (/[1-9]/.test(text)) return text
  }
  return formatLength(length, units, { digits: usual })
}

/**
 * A length with as many digits as a sheet ever prints: at least the usual digits, then up to the tenth of a thousandth
 * (inch) or a micrometer (mm), and further if that is not exact yet.
 */
export function formatExact(length: Length, units: Units): string {
  return formatLength(length, units, { digits: formatDigitsFor([length], units) })
}

/** Fewest digits that show every one of the lengths exactly, within the limits of a sheet. */
export function formatDigitsFor(lengths: readonly Length[], units: Units): number {
  const { fewest, most } = DIGITS[units]
  for (let digits = fewest; digits < most; digits++) {
    const step = perUnit(units) / 10 ** digits
    if (lengths.every((length) => length % step === 0)) return digits
  }
  return most
}

/**
 * A length in inches as a fraction with a denominator of at most 64 (`5/32`, `1 1/2`, `2`); null if it is not exactly
 * one.
 */
export function formatFraction(length: Length): string | null {
  const sixtyFourths = (length * 64) / INCH
  if (length % (INCH / 64) !== 0) return null
  const sign = sixtyFourths < 0 ? '-' : ''
  const whole = Math.floor(Math.abs(sixtyFourths) / 64)
  let over = Math.abs(sixtyFourths) % 64
  let under = 64
  if (over === 0) return `${sign}${whole}`
  while (over % 2 === 0) {
    over /= 2
    under /= 2
  }
  return `${sign}${whole === 0 ? '' : `${whole} `}${over}/${under}`
}

function formatDecimal(length: Length, per: Length, digits: number): string {
  const step = per / 10 ** digits
  const magnitude = Math.abs(length)
  const floor = Math.floor(magnitude / step)
  const marks = 2 * (magnitude - floor * step) >= step ? floor + 1 : floor
  const sign = length < 0 && marks > 0 ? '-' : ''
  const text = String(marks).padStart(digits + 1, '0')
  return digits === 0 ? `${sign}${text}` : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`
}
