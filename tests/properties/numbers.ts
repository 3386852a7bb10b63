import type { Tape } from './tape.ts'

/** A length as the job writes it, and what it is worth in job units. */
export type Written = { text: string; value: number; low: number; high: number }

export type Units = 'inch' | 'mm'

/** Rounds to what a drawing in these units would carry, and writes it in one of the ways a machinist might. */
export function written(tape: Tape, units: Units, about: number, tolerance: 'never' | 'sometimes' = 'never'): Written {
  const bare = units === 'inch' ? inInches(tape, about) : inMillimeters(about)
  // A tolerance behind a unit would be in that unit: only bare numbers get one here.
  if (tolerance === 'never' || !tape.chance(30) || /[a-z/ ]/.test(bare.text))
    return { ...bare, low: bare.value, high: bare.value }
  const [over, under] = units === 'inch' ? tape.pick(inchLimits) : tape.pick(metricLimits)
  const symmetric = over === under
  const text = symmetric ? `${bare.text} ±${over}` : `${bare.text} +${over} -${under}`
  const [low, high] = [bare.value - under, bare.value + over]
  return { text, value: (low + high) / 2, low, high }
}

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
