import { type Parsed, parsed, refused } from './parsed.ts'

/** An exact number as written: numerator over a positive denominator. Decimals never pass through doubles. */
export type Rational = { readonly numerator: bigint; readonly denominator: bigint }

/**
 * Longest text accepted as a number or dimension: far longer than on any drawing, far shorter than what makes big
 * integers slow.
 */
export const LONGEST_TEXT = 80

const DECIMAL = /^(\d*)(?:\.(\d*))?$/
const FRACTION = /^(?:(\d+) )?(\d+) ?\/ ?(\d+)$/

/** Reads `0.125`, `.125`, `1/8`, `1 3/16`, each with or without a sign. The text must be tidied first. */
export function parseNumber(text: string): Parsed<Rational> {
  if (text.includes(',')) return refused(`"${text}" has a comma in it`, commaHint(text))
  const [, sign, unsigned] = /^([+-]?) ?(.*)$/s.exec(text) as unknown as [string, string, string]
  const magnitude = parseUnsigned(unsigned, text)
  if (!magnitude.ok || sign !== '-') return magnitude
  return parsed({ numerator: -magnitude.value.numerator, denominator: magnitude.value.denominator })
}

function parseUnsigned(unsigned: string, text: string): Parsed<Rational> {
  const fraction = FRACTION.exec(unsigned)
  if (fraction)
    return fromFraction(fraction[1] ?? '0', fraction[2] as string, fraction[3] as string, fraction[1] !== undefined)
  const decimal = DECIMAL.exec(unsigned)
  const whole = decimal?.[1] ?? ''
  const part = decimal?.[2] ?? ''
  if (whole + part === '') return refused(`"${text}" is not a number`, 'write it like 0.125, .125, 1/8 or 1 3/16')
  return parsed({ numerator: BigInt(whole + part), denominator: 10n ** BigInt(part.length) })
}

function fromFraction(whole: string, over: string, under: string, mixed: boolean): Parsed<Rational> {
  const denominator = BigInt(under)
  if (denominator === 0n) return refused(`${over}/${under} divides by zero`, 'write a fraction like 5/32')
  if (mixed && BigInt(over) >= denominator) {
    return refused(
      `${over}/${under} after the whole number ${whole} is not less than one`,
      `write a fraction below one after a whole number, like ${whole} 3/16`,
    )
  }
  return parsed({ numerator: BigInt(whole) * denominator + BigInt(over), denominator })
}

const commaHint = (text: string): string => {
  const decimal = /^[+-]?\d*,\d+$/.test(text)
    ? `: ${text.replace(',', '.')}`
    : ', and nothing between thousands: 0.5, 1000'
  return `use a point${decimal}`
}

/** `rational × per` as a whole number, half away from zero; null if a double can no longer hold it exactly. */
export function scaled({ numerator, denominator }: Rational, per: number): number | null {
  const product = numerator * BigInt(per)
  const magnitude = product < 0n ? -product : product
  const whole = (2n * magnitude + denominator) / (2n * denominator)
  if (whole > BigInt(Number.MAX_SAFE_INTEGER)) return null
  return Number(product < 0n ? -whole : whole)
}

/**
 * Replaces the variants that keyboards and drawings use by one: minus signs, primes, blanks, and the hyphen in
 * `1-3/16`.
 */
export function tidy(source: string): string {
  return source
    .replace(/[−–‐‑]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/″|”|''/g, '"')
    .replace(/[′’]/g, "'")
    .replace(/º/g, '°')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/(^|[^\d./])(\d+)-(\d+\/\d+)(?!\d)/g, '$1$2 $3')
}
