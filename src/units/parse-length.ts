import { INCH, type Length, MM, perUnit, type Units } from './length.ts'
import { LONGEST_TEXT, parseNumber, scaled, tidy } from './number-text.ts'
import { type Parsed, parsed, refused } from './parsed.ts'

export const LENGTH_HINT = 'write a length like 0.125, 1 3/16, 5/32 in, 0.125", 12 thou or 4.5 mm'

export type LengthUnit = 'in' | 'thou' | 'mm'

const THOU: Length = INCH / 1000
const SPELLINGS: Readonly<Record<string, LengthUnit>> = {
  in: 'in',
  'in.': 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  thou: 'thou',
  thous: 'thou',
  mm: 'mm',
}

/**
 * Reads one length without a tolerance to whole picometers; bare numbers are in `units`. It may be negative, because a
 * place may be.
 */
export function parseLength(source: string, units: Units): Parsed<Length> {
  const text = tidy(source)
  if (text.length > LONGEST_TEXT) return tooLong(text)
  const split = splitUnit(text)
  return split.ok ? readIn(split.value.number, split.value.unit, units, text) : split
}

export const tooLong = (text: string): Parsed<never> =>
  refused(`"${text.slice(0, 20)}…" is ${text.length} characters long, too long for a dimension`, LENGTH_HINT)

/** Splits a tidied text into its number and the unit behind it, without reading the number. */
export function splitUnit(text: string): Parsed<{ readonly number: string; readonly unit: LengthUnit | null }> {
  const match = /^(.*?) ?([a-zµμ"'°]+\.?)$/i.exec(text)
  if (!match) return parsed({ number: text, unit: null })
  const [, number, spelling] = match as unknown as [string, string, string]
  const unit = Object.hasOwn(SPELLINGS, spelling.toLowerCase()) ? SPELLINGS[spelling.toLowerCase()] : undefined
  if (unit) return parsed({ number, unit })
  if (!/\d/.test(number)) return refused(`"${text}" is not a length`, LENGTH_HINT)
  return refused(`"${spelling}" is not a unit of length`, 'units are in (or "), thou and mm')
}

/** Reads a number text in its own unit, or in `units` if it has none. */
export function readIn(number: string, unit: LengthUnit | null, units: Units, text: string): Parsed<Length> {
  if (number === '') return refused(text === '' ? 'there is no length here' : `"${text}" is not a length`, LENGTH_HINT)
  const rational = parseNumber(number)
  if (!rational.ok)
    return rational.message.endsWith('is not a number') ? refused(`"${text}" is not a length`, LENGTH_HINT) : rational
  const length = scaled(rational.value, perLengthUnit(unit, units))
  return length === null ? refused(`"${text}" is longer than anything a lathe holds`, LENGTH_HINT) : parsed(length)
}

const perLengthUnit = (unit: LengthUnit | null, units: Units): Length => {
  if (unit === 'in') return INCH
  if (unit === 'thou') return THOU
  return unit === 'mm' ? MM : perUnit(units)
}
