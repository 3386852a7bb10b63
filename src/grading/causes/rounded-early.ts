import { solve } from '../../exercise/solve.ts'
import { INCH, MM } from '../../units/length.ts'
import type { Cause } from './cause.ts'
import { readingOf } from './reading-of.ts'

const rounded = (value: number, step: number): number => Math.round(value / step) * step

export const roundedEarly: Cause = {
  code: 'rounded-early',
  says: 'rounded to a hundredth of an inch, a sixty-fourth or a tenth of a millimeter before the end',
  teach: 'round once, at the end, to the mark of the dial',
  reading: (facts) => stepsOf(facts.units).map((step) => readingOf(facts, rounded(facts.travel, step))),
  worked: (facts) => {
    const right = solve(facts)
    if (facts.unit !== 'length' || typeof right !== 'number') return []
    return stepsOf(facts.units).flatMap((step) => [rounded(right, step), ...halves(facts.formula, facts.given, step)])
  },
}

const stepsOf = (units: 'inch' | 'mm'): number[] => (units === 'inch' ? [INCH / 100, INCH / 64] : [MM / 10])

/** A depth that is rounded before it is doubled. */
const halves = (
  formula: string,
  { surface = 0, depth = 0 }: Readonly<Record<string, number>>,
  step: number,
): number[] =>
  formula === 'bottomDiameter' ? [surface - 2 * rounded(depth, step), rounded(surface, step) - 2 * depth] : []
