import type { Length, Units } from '../units/length.ts'
import { inUnits } from '../units/length.ts'
import type { Figure, FigureUnit, Phrase, Role } from './phrase.ts'

/**
 * A length in pm as a figure of the given units: thousandths of an inch, or hundredths of a millimeter, up to two more
 * decimals if they show it exactly, otherwise one more. Nobody scribes finer than a thousandth, so a place keeps the
 * fewest.
 */
export const length = (role: Role, value: Length, units: Units): Figure => {
  const plain = inUnits(value, units)
  const fewest = units === 'inch' ? 3 : 2
  if (role === 'place') return figure(role, plain, units, fewest)
  if (BOUNDS.has(role)) return figure(role, plain, units, onPlace(plain, fewest) ? fewest : fewest + 1)
  const most = EXACT.has(role) ? fewest + 2 : fewest + 1
  const exact = decimals(plain, fewest, most + 1)
  // A zero at the end of a rounded number would claim one more decimal than there is.
  const digits = exact > most ? decimals(Number(plain.toFixed(fewest + 1)), fewest, fewest + 1) : exact
  return figure(role, plain, units, DIFFERENCES.has(role) ? shownAtAll(value, plain, digits) : digits)
}

/** To the nine decimals of a figure. */
const onPlace = (value: number, digits: number): boolean => Math.abs(value - Number(value.toFixed(digits))) < 5e-10

/** Rounded outward: never inside the value, and by less than one of the last decimal. */
const BOUNDS: ReadonlySet<Role> = new Set<Role>(['low', 'high'])

/** Differences between two places or sizes. */
const DIFFERENCES: ReadonlySet<Role> = new Set<Role>(['clearance', 'undersize', 'spare', 'along', 'expected'])

/**
 * As many more digits as it needs for a value not to show as zero. Less than a thousandth of a micrometer is rounding
 * error.
 */
const shownAtAll = (value: Length, plain: number, digits: number): number => {
  let more = digits
  while (Math.abs(value) >= 1000 && more < 9 && Number(plain.toFixed(more)) === 0) more++
  return more
}

/**
 * Values stated by a drawing, a tool or a piece of stock; all others are shown with at most one decimal more than the
 * fewest.
 */
const EXACT: ReadonlySet<Role> = new Set<Role>(['limit', 'drawing', 'tool', 'stock', 'undersize', 'spare'])

/** A plain number; it gets its id when its phrase is put into the sheet (see `identify`). */
export const figure = (role: Role, value: number, unit: FigureUnit, digits = 0): Figure => ({
  id: role,
  role,
  value: rounded(value),
  unit,
  digits,
  from: GIVEN.has(role) ? 'given' : 'answer',
})

/** Stated by the job, the drawing, the lathe or the tool; everything else is calculated. */
const GIVEN: ReadonlySet<Role> = new Set<Role>(['drawing', 'stock', 'tool', 'dial', 'backlash', 'limit', 'count'])

/** The fewest decimals, from `least` to `most`, that show the value exactly. */
export const decimals = (value: number, least: number, most: number): number => {
  for (let digits = least; digits < most; digits++) {
    if (Math.abs(value - Number(value.toFixed(digits))) < 1e-6) return digits
  }
  return most
}

/**
 * Gives every figure of a phrase an id that is unique in the sheet: the place of the phrase, the role, and the number
 * among figures of that role.
 */
export const identify = (place: string, phrase: Phrase): Phrase => {
  const seen = new Map<string, number>()
  return phrase.map((part) => {
    if (typeof part === 'string') return part
    const n = (seen.get(part.role) ?? 0) + 1
    seen.set(part.role, n)
    return { ...part, id: `${place}.${part.role}${n > 1 ? `.${n}` : ''}` }
  })
}

/** Removes binary rounding error: nine decimals are finer than a picometer in millimeters. */
const rounded = (value: number): number => {
  const clean = Number(value.toFixed(9))
  return clean === 0 ? 0 : clean
}
