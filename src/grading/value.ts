import type { Blank, ReadingFacts } from '../exercise/blank.ts'
import { readable } from '../lathe/lathe.ts'
import { INCH, type Length, perUnit, type Units } from '../units/length.ts'
import { tidy } from '../units/number-text.ts'
import { parseLength, splitUnit } from '../units/parse-length.ts'
import { type Parsed, parsed, refused } from '../units/parsed.ts'

/**
 * What an answer may mean, in the units of the blank, the likeliest first: on a shop floor 125, .125, 1/8 and 0.125 in
 * are one length, and 125, .125 and 1 turn 25 one reading.
 */
export const valuesOf = (text: string, { facts, right }: Pick<Blank, 'facts' | 'right'>): Parsed<readonly number[]> => {
  if (typeof right !== 'number') return parsed([])
  const written = tidy(text).toLowerCase()
  if (facts.sort === 'reading') return readings(written, facts)
  if (facts.sort === 'worked' && facts.unit !== 'length') return counts(written)
  return lengths(written, facts.units)
}

const TURNS = /^(?:(\d+) (?:whole )?turns?|no turns?|(\d+) ?t(?![a-z]))(?:(?:,| and| \+|)? ?(?:on )?(?:mark )?(.+))?$/

/** "1 turn and 28 (.128)", as a sheet prints it: what is in brackets says the same once more. */
const withoutAgain = (text: string): string => text.replace(/ ?\([^()]*\)$/, '')

const readings = (as: string, facts: ReadingFacts): Parsed<readonly number[]> => {
  const { scale } = facts
  const text = withoutAgain(as)
  const turned = TURNS.exec(text)
  if (turned !== null && scale.kind === 'dial') {
    const [, whole = '0', short, rest] = turned
    const marks = rest === undefined ? 0 : numberIn(rest.replace(/ ?marks?$/, ''))
    if (marks === null) return unread(text)
    // "1 turn and .025": what follows the turns may be a reading as well.
    const part = rest?.includes('.') === true && marks < 1 ? marks * perUnit(scale.units) : marks * scale.graduation
    return parsed([Number(short ?? whole) * scale.perTurn + part])
  }
  const plain = text.replace(/^mark /, '').replace(/ ?(?:marks?|on the dial|deep|dia)$/, '')
  const read = parseLength(plain, scale.units)
  if (!read.ok) return unread(text)
  const unit = splitUnit(plain)
  const bare = unit.ok && unit.value.unit === null
  // Of a whole number a mark is meant; a number with a point or a fraction is what the dial shows.
  const count = numberIn(plain)
  // A number below one with a point is no count of marks.
  const isCount = bare && count !== null && (Math.abs(count) >= 1 || !plain.includes('.'))
  const marks = isCount && scale.kind === 'dial' ? [count * scale.graduation] : []
  const first = /[./]/.test(plain) && !/ /.test(plain) ? [read.value, ...marks] : [...marks, read.value]
  return parsed(first.map((value) => (Math.abs(value) < readable(scale) / 1000 ? 0 : value)))
}

/** A bare whole number of an inch drawing is thousandths: 125 for .125. Common practice, no source. */
const lengths = (text: string, units: Units): Parsed<readonly Length[]> => {
  const plain = text.replace(/ ?(?:dia|diameter|deep|wide)\.?$/, '')
  const read = parseLength(plain, units)
  if (!read.ok) return unread(text)
  const thou = units === 'inch' && /^-?\d+$/.test(plain) ? [(Number(plain) * INCH) / 1000] : []
  return parsed([...thou, read.value])
}

/** A speed, a number of turns, a mark. */
const counts = (text: string): Parsed<readonly number[]> => {
  const value = numberIn(text.replace(/^mark |,/g, '').replace(/ ?(?:rpm|turns?|marks?)$/, ''))
  return value === null ? unread(text) : parsed([value])
}

const unread = (text: string): Parsed<never> =>
  refused(
    `${JSON.stringify(text.slice(0, 40))} cannot be read as an answer`,
    'write a number like 125, .125, 1 turn 25 or 1/8',
  )

const numberIn = (text: string): number | null => {
  const found = /^([+-])?(?:(\d+) )?(\d+)\/(\d+)$|^([+-])?(\d*\.?\d+|\d+\.)$/.exec(text.trim())
  if (found === null) return null
  const [, sign, whole = '0', over, under, sign2, plain] = found
  const size =
    plain !== undefined
      ? Number(plain)
      : Number(under) === 0
        ? Number.NaN
        : Number(whole) + Number(over) / Number(under)
  return Number.isNaN(size) ? null : (sign ?? sign2) === '-' ? -size : size
}
