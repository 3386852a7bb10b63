import { formatFraction } from '../units/format.ts'
import { type Length, perUnit, type Units } from '../units/length.ts'
import { tidy } from '../units/number-text.ts'
import { parseDimension } from '../units/parse-dimension.ts'
import { parseLength, splitUnit } from '../units/parse-length.ts'
import { type Parsed, parsed, refused } from '../units/parsed.ts'
import type { Range } from './exercise.ts'

/** A range has so many amounts at most: a step that is a slip of the pen must not fill the memory. */
const MOST = 100_000

/** Every amount of a range, pm, and how they are written. Degrees and speeds go through the same arithmetic. */
export const amountsOf = ({ from, to, step }: Range, units: Units): Parsed<readonly Length[]> => {
  const [first, last, by] = [from, to, step].map((text) => parseLength(text, units))
  for (const read of [first!, last!, by!]) if (!read.ok) return read
  const [low, high, each] = [first!, last!, by!].map((read) => (read.ok ? read.value : 0)) as [number, number, number]
  if (each <= 0) return refused(`a step of ${step} leads nowhere`, 'give a step above 0, like 0.005')
  if (high < low) return refused(`the range ends at ${to}, before it begins at ${from}`, 'give the smaller one as from')
  const count = Math.floor((high - low) / each + 1e-9) + 1
  if (count > MOST) return refused(`the range has ${count} values`, `take a larger step: ${MOST} are the most`)
  return parsed(Array.from({ length: count }, (_, i) => low + i * each))
}

/** An amount as a job has it, in the manner of `like`: a fraction stays one, and so does a unit. */
export const written = (value: Length, like: string, units: Units, digits = decimalsIn(like)): string => {
  const split = splitUnit(tidy(like))
  const unit = split.ok ? split.value.unit : null
  const fraction = like.includes('/') && unit !== 'mm' && unit !== 'thou' ? formatFraction(value) : null
  if (fraction !== null)
    return unit === null && units === 'mm' ? `${fraction} in` : `${fraction}${unit === null ? '' : ' in'}`
  if (unit === 'thou') return `${decimal((value / perUnit('inch')) * 1000, digits)} thou`
  if (unit === null) return decimal(value / perUnit(units), digits)
  return unit === 'mm'
    ? `${decimal(value / perUnit('mm'), digits)} mm`
    : `${decimal(value / perUnit('inch'), digits)} in`
}

/** With as many places as the example has, and more only where it needs them: .080 stays .080. */
const decimal = (value: number, digits: number): string => {
  const exact = String(Number(value.toFixed(7)))
  return decimalsIn(exact) < digits ? value.toFixed(digits) : exact
}

export const decimalsIn = (text: string): number => /\.(\d+)/.exec(text)?.[1]?.length ?? 0

/** What follows the size of a dimension: ±0.005, +0.004 -0. */
export const toleranceIn = (text: string): string => /\s*(?:±|\+\/?-|\+)\s*[\d.].*$/.exec(text)?.[0] ?? ''

/** The size alone, pm. */
export const sizeIn = (text: string, units: Units): Parsed<Length> => {
  const read = parseDimension(text, units)
  return read.ok ? parsed(read.value.nominal) : read
}
