import { formatDifference, formatDigitsFor } from '../units/format.ts'
import { inUnits, type Length, type Units } from '../units/length.ts'
import { decimals, figure } from './figure.ts'
import type { Figure, Phrase, Role } from './phrase.ts'

/** A plain number is a count or the number of a step. */
export type Part = string | number | Figure | Phrase

/** A sentence with its numbers left as data: say`the groove may be ${show(most)} wide at most`. */
export const say = (texts: TemplateStringsArray, ...parts: readonly Part[]): Phrase =>
  together(texts.flatMap((text, i) => (i === 0 ? [text] : [parts[i - 1]!, text])))

/** Joins parts; neighboring words become one string, and only empty parts are left out. */
export const together = (parts: readonly Part[]): Phrase => {
  const made: (string | Figure)[] = []
  const add = (part: string | Figure): void => {
    const last = made.at(-1)
    if (typeof part !== 'string') made.push(part)
    else if (typeof last === 'string') made[made.length - 1] = last + part
    else if (part !== '') made.push(part)
  }
  for (const part of parts) {
    if (isList(part)) for (const one of part) add(one)
    else add(typeof part === 'number' ? count(part) : part)
  }
  return made
}

const isList = (part: Part): part is Phrase => Array.isArray(part)

/** Joins parts with a separator, such as ", or ". */
export const joinedBy = (between: string, parts: readonly Part[]): Phrase =>
  together(parts.flatMap((part, i) => (i === 0 ? [part] : [between, part])))

/** Steps that are done the same: each by its number, or of many the first and the last. */
export const stepsNamed = (numbers: readonly number[]): Phrase => {
  const [first, last] = [numbers[0] ?? 0, numbers.at(-1) ?? 0]
  if (numbers.length > 4) return say`every infeed from step\u00a0${first} to\u00a0${last}`
  if (numbers.length < 2) return say`step\u00a0${first}`
  return say`steps\u00a0${joinedBy(', ', numbers.slice(0, -1))} and\u00a0${last}`
}

/** A length with as many digits as a sheet ever prints. pm. */
export const exact = (role: Role, value: Length, units: Units): Figure =>
  about(role, value, units, formatDigitsFor([value], units))

/** A length with a given number of digits; by default thousandths of an inch or hundredths of a millimeter. pm. */
export const about = (role: Role, value: Length, units: Units, digits = units === 'inch' ? 3 : 2): Figure =>
  figure(role, inUnits(value, units), units, digits)

/** The difference of two lengths: with the given digits, or with as many more as it needs not to show as zero. pm. */
export const difference = (role: Role, value: Length, units: Units, digits = units === 'inch' ? 3 : 2): Figure => {
  const shown = formatDifference(value, units, { digits }).split('.')[1]
  return about(role, value, units, shown?.length ?? 0)
}

/** An angle in degrees and minutes. */
export const degrees = (role: Role, value: number): Figure => figure(role, value, 'deg', 3)

/** How many, or which step. */
const count = (value: number): Figure => figure('count', value, 'count', decimals(value, 0, 6))

/** A size by its name in a shop, `1/4 in`. pm. */
export const called = (role: Role, name: string, value: Length, units: Units): Figure => ({
  ...figure(role, inUnits(value, units), units, 4),
  text: name,
})

/** A dimension as it is written in the job. pm, or degrees. */
export const asDrawn = (
  { text, aim }: { readonly text: string; readonly aim: number },
  units: Units | 'deg',
): Figure => ({
  ...figure('drawing', units === 'deg' ? aim : inUnits(aim, units), units, 4),
  text,
})
