import type { AngleDimension, Degrees } from './dimension.ts'
import { fromDeviations, fromPlusMinus, fromRange, type Limits, needsBoth, withText } from './limits.ts'
import { LONGEST_TEXT, parseNumber, type Rational, scaled, tidy } from './number-text.ts'
import { type Parsed, parsed, refused } from './parsed.ts'
import { splitTolerance, type Toleranced } from './tolerance.ts'

const ANGLE_HINT = `write an angle like 34, 34 deg, 34°, 14 1/2 deg or 84° 16'`

/**
 * Angles are counted in whole millionths of a second of arc, so that tenths of a degree, minutes and 64ths add up
 * exactly.
 */
const DEGREE = 3_600_000_000
const MINUTE = DEGREE / 60
const SECOND = DEGREE / 3600

const SEXAGESIMAL =
  /^([+-]?) ?(\d+) ?(?:°|deg\.?|degrees?) ?([\d.]+) ?(?:'|min\.?|minutes?)(?: ?([\d.]+) ?(?:"|sec\.?|seconds?))?$/i
const PLAIN = /^(.*?) ?(?:°|deg\.?|degrees?)?$/i
const MINUTES_ONLY = /^([+-]? ?[\d.]+) ?(?:'|min\.?|minutes?)$/i

/** Reads one angle in degrees, also with minutes and seconds. May be negative. */
export function parseAngle(source: string): Parsed<Degrees> {
  const text = tidy(source)
  const counted = text.length > LONGEST_TEXT ? notAnAngle(text) : readAngle(text)
  return counted.ok ? parsed(counted.value / DEGREE) : counted
}

/** Reads an angle with or without a tolerance. */
export function parseAngleDimension(source: string): Parsed<AngleDimension> {
  const text = tidy(source)
  if (text.length > LONGEST_TEXT) return notAnAngle(text)
  const limits = readLimits(splitTolerance(text), text)
  if (!limits.ok) return limits
  const counted = withText(limits.value, source.trim(), (middle) => middle)
  return parsed({
    nominal: counted.nominal / DEGREE,
    limits: counted.limits && [counted.limits[0] / DEGREE, counted.limits[1] / DEGREE],
    aim: counted.aim / DEGREE,
    text: counted.text,
  })
}

function readLimits(written: Toleranced, text: string): Parsed<Limits> {
  switch (written.form) {
    case 'plain':
      return readAll([written.nominal], ([nominal]) => parsed({ nominal: nominal as number, limits: null }))
    case 'range':
      return readAll([written.low, written.high], ([low, high]) => fromRange(low as number, high as number, text))
    case 'plus-minus':
      return readAll([written.nominal, written.deviation], ([nominal, deviation]) =>
        fromPlusMinus(nominal as number, deviation as number, text),
      )
    case 'deviations':
      return readAll([written.nominal, written.first, written.second], ([nominal, first, second]) =>
        fromDeviations(nominal as number, first as number, second as number, text),
      )
    case 'least':
    case 'one-deviation':
      return needsBoth(written, text)
    case 'most':
      return refused(`"${text}" has no lower limit`, 'write both limits, like 37 to 39')
    case 'class':
      return notAnAngle(text)
  }
}

function readAll(texts: readonly string[], build: (angles: readonly number[]) => Parsed<Limits>): Parsed<Limits> {
  const angles: number[] = []
  for (const text of texts) {
    const angle = readAngle(text)
    if (!angle.ok) return angle
    angles.push(angle.value)
  }
  return build(angles)
}

function readAngle(text: string): Parsed<number> {
  const parts = SEXAGESIMAL.exec(text)
  if (parts) return fromParts(parts[1] as string, parts[2] as string, parts[3] as string, parts[4] ?? '0', text)
  const minutes = MINUTES_ONLY.exec(text)
  const degrees = PLAIN.exec(text)
  const number = parseNumber((minutes ?? degrees)?.[1] ?? '')
  if (!number.ok) return text.includes(',') || number.message.includes('/') ? number : notAnAngle(text)
  return counted(number.value, minutes ? MINUTE : DEGREE, text)
}

function fromParts(
  sign: string,
  degreeText: string,
  minuteText: string,
  secondText: string,
  text: string,
): Parsed<number> {
  const units = [DEGREE, MINUTE, SECOND]
  const values: number[] = []
  for (const [index, part] of [degreeText, minuteText, secondText].entries()) {
    const number = parseNumber(part)
    const value = number.ok ? counted(number.value, units[index] as number, text) : notAnAngle(text)
    if (!value.ok) return value
    if (index > 0 && value.value >= (units[index - 1] as number)) {
      return refused(
        `"${text}" has ${part} ${index === 1 ? 'minutes' : 'seconds'}, and 60 make a whole one above`,
        'write less than 60',
      )
    }
    values.push(value.value)
  }
  const sum = values.reduce((total, value) => total + value, 0)
  return parsed(sign === '-' && sum !== 0 ? -sum : sum)
}

function counted(number: Rational, per: number, text: string): Parsed<number> {
  const value = scaled(number, per)
  return value === null ? notAnAngle(text) : parsed(value)
}

const notAnAngle = (text: string): Parsed<never> =>
  refused(
    text === '' ? 'there is no angle here' : `"${text.length > 30 ? `${text.slice(0, 30)}…` : text}" is not an angle`,
    ANGLE_HINT,
  )
