/**
 * A length in picometers. A whole number if it comes from a drawing or a dial: every 64th of an inch, half of one, and
 * every micrometer is exact.
 */
export type Length = number

/** The units a file or a dial is marked in. */
export type Units = 'inch' | 'mm'

export const MM: Length = 1_000_000_000
export const INCH: Length = 25_400_000_000

/** Picometers in one of the given units. */
export const perUnit = (units: Units): Length => (units === 'inch' ? INCH : MM)

/** A length in pm as a plain number of the given units (for JSON and for arithmetic in tests). */
export const inUnits = (length: Length, units: Units): number => length / perUnit(units)
