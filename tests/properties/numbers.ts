import type { Tape } from './tape.ts'

/** A length as the job writes it, and what it is worth in job units. */
export type Written = { text: string; value: number; low: number; high: number }

/** `even`: now and then the same to both sides, so that the middle is what is written. */
export type Tolerance = 'never' | 'sometimes' | 'even'

export type Units = 'inch' | 'mm'

/** Rounds to what a drawing in these units would carry, and writes it in one of the ways a machinist might. */
export function written(tape: Tape, units: Units, about: number, tolerance: Tolerance = 'never'): Written {
  const bare = units === 'inch' ? inInches(tape, about) : inMillimeters(about)
  // A tolerance behind a unit would be in that unit: only bare numbers get one here.
  if (tolerance === 'never' || !tape.chance(30) || /[a-z/ ]/.test(bare.text))
    return { ...bare, low: bare.value, high: bare.value }
  const choices: readonly (readonly [number, number])[] =
    tolerance === 'even' ? EVEN[units] : units === 'inch' ? inchLimits : metricLimits
  const [over, under] = tape.pick(choices)
  const symmetric = over === under
  const text = symmetric ? `${bare.text} ±${over}` : `${bare.text} +${over} -${under}`
  const [low, high] = [bare.value - under, bare.value + over]
  return { text, value: (low + high) / 2, low, high }
}

const EVEN = {
  inch: [
    [0.002, 0.002],
    [0.005, 0.005],
    [0.01, 0.01],
  ],
  mm: [
    [0.05, 0.05],
    [0.1, 0.1],
    [0.2, 0.2],
  ],
} as const

const inchLimits = [
  [0.005, 0.005],
  [0.003, 0],
  [0.002, 0.002],
  [0, 0.004],
  [0.01, 0.01],
] as const

const metricLimits = [
  [0.1, 0.1],
  [0.2, 0],
  [0.05, 0.05],
  [0, 0.1],
] as const

/** Standard tolerances of ISO 286-1, in millimeters, for sizes up to so many. */
const grades = [
  { upTo: 3, h11: 0.06, H13: 0.14 },
  { upTo: 6, h11: 0.075, H13: 0.18 },
  { upTo: 10, h11: 0.09, H13: 0.22 },
  { upTo: 18, h11: 0.11, H13: 0.27 },
  { upTo: 30, h11: 0.13, H13: 0.33 },
  { upTo: 50, h11: 0.16, H13: 0.39 },
  { upTo: 80, h11: 0.19, H13: 0.46 },
] as const

/** A size in millimeters with its class: h lies under the size, H over it. */
export function classed(size: number, kind: 'h11' | 'H13'): Written {
  const value = Math.round(size * 10) / 10
  const grade = grades.find(({ upTo }) => value <= upTo)![kind]
  const [low, high] = kind === 'h11' ? [value - grade, value] : [value, value + grade]
  return { text: `${value} ${kind}`, value: (low + high) / 2, low, high }
}

function inInches(tape: Tape, about: number): { text: string; value: number } {
  const style = tape.int(0, 9)
  const parts = Math.round(Math.abs(about) * 64)
  if (style === 0 && parts > 0)
    return { text: `${about < 0 ? '-' : ''}${fraction(parts)}`, value: (Math.sign(about) * parts) / 64 }
  const thou = Math.round(about * 1000)
  if (style === 1 && thou > 0 && thou < 200) return { text: `${thou} thou`, value: thou / 1000 }
  if (style === 2 && about > 0.02) {
    const mm = Math.round(about * 254) / 10
    return { text: `${mm} mm`, value: mm / 25.4 }
  }
  if (style === 3)
    return { text: (Math.round(about * 10_000) / 10_000).toFixed(4), value: Math.round(about * 10_000) / 10_000 }
  return { text: (thou / 1000).toFixed(3).replace(/^(-?)0\./, '$1.'), value: thou / 1000 }
}

function fraction(parts: number): string {
  let [top, bottom] = [parts % 64, 64]
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  const whole = Math.floor(parts / 64)
  if (top === 0) return String(whole)
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`
}

function inMillimeters(about: number): { text: string; value: number } {
  const value = Math.round(about * 20) / 20
  return { text: String(value), value }
}
