import { formatFraction } from '../units/format.ts'
import { INCH, type Units } from '../units/length.ts'
import { type Figure, HELD, type Phrase, type Prose } from './phrase.ts'

/** A phrase as plain words. Figures in the sheet's own units have no unit, all others show theirs. */
export const words = (phrase: Phrase, units: Units): string => heldWords(phrase, units).replaceAll(HELD, ' ')

/** The same with the no-break spaces, for text that is wrapped. */
export const heldWords = (phrase: Phrase, units: Units): string =>
  phrase.map((part) => (typeof part === 'string' ? part : number(part, units).replaceAll(' ', HELD))).join('')

/** Prose as plain words. */
export const plain = (prose: Prose, units: Units): string => (typeof prose === 'string' ? prose : words(prose, units))

export const number = (figure: Figure, units: Units): string => {
  if (figure.text !== undefined) return figure.text
  switch (figure.unit) {
    case 'inch':
    case 'mm':
      return measure(figure, units)
    case 'rule':
      return formatFraction(Math.round(figure.value * INCH)) ?? figure.value.toFixed(figure.digits)
    case 'deg':
      return degrees(figure)
    case 'mark':
    case 'turn':
      return mixed(figure)
    case 'ft/min':
    case 'm/min':
    case 's':
      return `${figure.value.toFixed(figure.digits)} ${figure.unit}`
    default:
      return figure.value.toFixed(figure.digits)
  }
}

/**
 * Inches the way a dial is spoken: no zero before the point. Millimeters keep it. Never "in" as the unit: on a sheet
 * that is a direction.
 */
const measure = (figure: Figure, units: Units): string => {
  const all = fixed(figure)
  const spoken = figure.unit === 'inch' ? all.replace(/^(-?)0\./, '$1.') : all
  if (figure.unit === units) return spoken
  return figure.unit === 'inch' ? `${spoken}"` : `${spoken} mm`
}

const fixed = (figure: Figure): string => {
  if (figure.toward === undefined) return halfUp(figure.value, figure.digits)
  const parts = 10 ** figure.digits
  return (whole({ ...figure, value: figure.value * parts }) / parts).toFixed(figure.digits)
}

/** Rounds a half away from zero, also one that is slightly less in binary. */
const halfUp = (value: number, digits: number): string => {
  const parts = 10 ** digits
  const rounded = Math.floor(Math.abs(value) * parts + 0.5 + 1e-6) / parts
  return (value < 0 && rounded > 0 ? -rounded : rounded).toFixed(digits)
}

/** Less than a millionth of the last decimal shown is rounding error. */
const whole = ({ value, toward }: Figure): number => {
  if (toward === undefined) return Math.sign(value) * Math.round(Math.abs(value))
  return toward === 'down' ? Math.floor(value + 1e-6) : Math.ceil(value - 1e-6)
}

/** Compound scales are read in degrees and parts of a degree: whole degrees, or degrees and minutes. */
const degrees = (figure: Figure): string => {
  const minutes = Math.abs(whole({ ...figure, value: figure.value * 60 }))
  const sign = figure.value < 0 && minutes > 0 ? '-' : ''
  const rest = minutes % 60
  return `${sign}${Math.floor(minutes / 60)}°${rest === 0 ? '' : ` ${rest}'`}`
}

/** Parts of a mark or a turn as a fraction: 52 1/2. */
const mixed = (figure: Figure): string => {
  const whole = Math.floor(figure.value)
  const part = figure.value - whole
  const denominator = [2, 4, 5, 8, 10].find((n) => Math.abs(part * n - Math.round(part * n)) < 1e-9 && part > 1e-9)
  if (part < 1e-9) return String(whole)
  if (denominator === undefined) return figure.value.toFixed(figure.digits)
  return `${whole === 0 ? '' : `${whole} `}${Math.round(part * denominator)}/${denominator}`
}
