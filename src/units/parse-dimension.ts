import type { Dimension } from './dimension.ts'
import { gradeWidth } from './iso286.ts'
import { type Length, MM, type Units } from './length.ts'
import { fromDeviations, fromPlusMinus, fromRange, type Limits, needsBoth, withText } from './limits.ts'
import { LONGEST_TEXT, tidy } from './number-text.ts'
import { LENGTH_HINT, type LengthUnit, readIn, splitUnit, tooLong } from './parse-length.ts'
import { type Parsed, parsed, refused } from './parsed.ts'
import { splitTolerance, type Toleranced } from './tolerance.ts'
import { mayBeThou, ofWhatUnit } from './what-unit.ts'

/**
 * Reads a length with or without a tolerance, in every way a machinist writes one; bare numbers in `units`, all results
 * in whole pm.
 */
export function parseDimension(source: string, units: Units): Parsed<Dimension> {
  const text = tidy(source)
  if (text.length > LONGEST_TEXT) return tooLong(text)
  const limits = readLimits(splitTolerance(text), units, text)
  return limits.ok ? parsed(withText(limits.value, source.trim(), Math.round)) : limits
}

function readLimits(written: Toleranced, units: Units, text: string): Parsed<Limits> {
  switch (written.form) {
    case 'plain':
      return readAll([written.nominal], units, ([nominal]) => parsed({ nominal: nominal as Length, limits: null }))
    case 'range':
      return readAll([written.low, written.high], units, ([low, high]) =>
        fromRange(low as Length, high as Length, text),
      )
    case 'most':
      return readAll([written.nominal], units, ([most]) => upTo(most as Length, text))
    case 'least':
    case 'one-deviation':
      return needsBoth(written, text)
    case 'plus-minus':
      return readWithDeviations(written.nominal, [written.deviation], units, ([nominal, deviation]) =>
        fromPlusMinus(nominal as Length, deviation as Length, text),
      )
    case 'deviations':
      return readWithDeviations(written.nominal, [written.first, written.second], units, ([nominal, first, second]) =>
        fromDeviations(nominal as Length, first as Length, second as Length, text),
      )
    case 'class':
      return fromClass(written.nominal, written.letters, written.grade, units, text)
  }
}

/**
 * `0.010 max`: anything from zero up to the number, with the number as the aim (a corner radius that the tool may
 * have).
 */
const upTo = (most: Length, text: string): Parsed<Limits> =>
  most > 0
    ? parsed({ nominal: most, limits: [0, most], aim: most })
    : refused(`"${text}" leaves no room: the limits run from 0 up to the number`, 'write a number above 0 before "max"')

type Build = (lengths: readonly Length[]) => Parsed<Limits>

/** Bare numbers beside one that has a unit are in that unit: `3 to 3.2 mm`, `120 to 125 thou`. */
function readAll(texts: readonly string[], units: Units, build: Build): Parsed<Limits> {
  const unit = unitAmong(texts)
  return readEach(
    texts.map((each) => [each, unit]),
    units,
    build,
  )
}

/**
 * Bare deviations take the unit of their neighbor, otherwise that of the nominal. A bare nominal takes `in` or `mm`
 * from its deviations (`4.5 ±0.05 mm`), but not `thou`: `0.500 ±5 thou` is half an inch.
 */
function readWithDeviations(
  nominal: string,
  deviations: readonly string[],
  units: Units,
  build: Build,
): Parsed<Limits> {
  if (nominal === '' || /^[+-]$/.test(nominal))
    return refused('the tolerance has no size before it', 'write the nominal size before it, like 0.125 ±0.005')
  const ofDeviations = unitAmong(deviations)
  // `120 thou ±0.003` may mean three thousandths of an inch or of a thousandth: nobody should have to guess.
  if (
    ofDeviations === null &&
    unitAmong([nominal]) === 'thou' &&
    deviations.some((each) => /^[+-]? ?0?\.0\d*[1-9]/.test(each))
  )
    return refused(
      `the tolerance beside "${nominal}" has no unit: it could be thousandths or inches`,
      `write its unit too, like 120 thou ±3 thou or 120 thou ±0.003 in`,
    )
  if (ofDeviations === null) {
    const other = otherUnit(nominal, units)
    if (other !== null) return bareTolerance(nominal, deviations, other, units)
  }
  if (ofDeviations === 'thou' && mayBeThou(nominal, deviations)) {
    const tolerance = `${deviations.length === 1 ? '±' : ''}${deviations.join(' ').replace(/ ?thous?/gi, '')} thou`
    const [plural, unit] = units === 'mm' ? ['mm', 'mm'] : ['inches', 'in']
    return refused(
      `"${nominal}" beside a tolerance in thou has no unit: it could be ${nominal} thou or ${nominal} ${plural}`,
      `write its unit too, like ${nominal} thou ${tolerance} or ${nominal} ${unit} ${tolerance}`,
    )
  }
  const ofNominal = unitAmong([nominal]) ?? (ofDeviations === 'thou' ? null : ofDeviations)
  const fallback = ofDeviations ?? ofNominal
  const asked = fallback === 'thou' ? null : ofWhatUnit(nominal, deviations, fallback ?? (units === 'mm' ? 'mm' : 'in'))
  if (ofDeviations === null && asked !== null) return asked
  return readEach(
    [[nominal, ofNominal], ...deviations.map((each): [string, LengthUnit | null] => [each, fallback])],
    units,
    build,
  )
}

/** `4 mm ±0.005` in a file in inches: the tolerance may be meant in either unit. */
const otherUnit = (nominal: string, units: Units): 'mm' | 'in' | null => {
  const unit = unitAmong([nominal])
  if (unit === 'mm') return units === 'inch' ? 'mm' : null
  return unit === 'in' && units === 'mm' ? 'in' : null
}

function bareTolerance(
  nominal: string,
  deviations: readonly string[],
  written: 'mm' | 'in',
  units: Units,
): Parsed<never> {
  const bare = `${deviations.length === 1 ? '±' : ''}${deviations.join(' ')}`
  const own = units === 'mm' ? 'mm' : 'in'
  return refused(
    `the tolerance beside "${nominal}" has no unit, and this file is in ${units === 'mm' ? 'millimeters' : 'inches'}: it could be either`,
    `write its unit too, like ${nominal} ${bare} ${written} or ${nominal} ${bare} ${own}`,
  )
}

function readEach(
  texts: readonly (readonly [string, LengthUnit | null])[],
  units: Units,
  build: Build,
): Parsed<Limits> {
  const lengths: Length[] = []
  for (const [text, fallback] of texts) {
    const split = splitUnit(text)
    if (!split.ok) return split
    const length = readIn(split.value.number, split.value.unit ?? fallback, units, text)
    if (!length.ok) return length
    lengths.push(length.value)
  }
  return build(lengths)
}

const unitAmong = (texts: readonly string[]): LengthUnit | null => {
  const units = texts.map((text) => splitUnit(text)).map((split) => (split.ok ? split.value.unit : null))
  return units.find((unit) => unit !== null) ?? null
}

/**
 * ISO 286 classes are tables of millimeters, so the nominal must be one: bare in a file in mm, or with `mm` written.
 */
function fromClass(nominalText: string, letters: string, grade: number, units: Units, text: string): Parsed<Limits> {
  const split = splitUnit(nominalText)
  if (!split.ok) return refused(`"${text}" is not a length`, LENGTH_HINT)
  const unit = split.value.unit ?? (units === 'mm' ? 'mm' : null)
  const nominal = readIn(split.value.number, 'mm', units, text)
  if (!nominal.ok) return nominal
  if (letters !== 'H' && letters !== 'h') {
    return refused(
      `"${letters}${grade}" is not a class known here: only H and h are`,
      'write the limits as numbers, like 19.96 to 19.98',
    )
  }
  if (unit !== 'mm') {
    const remedy = `write ${split.value.unit ? 'the size in mm, like 20 mm h11' : `${split.value.number} mm ${letters}${grade} if it is in mm`}, else the limits as numbers`
    return refused(`"${text}" has an ISO 286 class on a size in inches`, remedy)
  }
  return withGrade(nominal.value, letters, grade, text)
}

function withGrade(nominal: Length, letter: 'H' | 'h', grade: number, text: string): Parsed<Limits> {
  if (grade < 5 || grade > 14)
    return refused(
      `grade ${grade} of "${text}" is not in the table`,
      'use grades 5 to 14, or write the limits as numbers',
    )
  const width = gradeWidth(nominal, grade)
  if (width === null) {
    return refused(
      `ISO 286 limits are known for sizes over 0 to 315 mm, not for ${nominal / MM} mm`,
      'write the limits as numbers',
    )
  }
  return parsed({ nominal, limits: letter === 'H' ? [nominal, nominal + width] : [nominal - width, nominal] })
}
