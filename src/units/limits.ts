import { type Parsed, parsed, refused } from './parsed.ts'

/**
 * A nominal with its limits, in whatever whole units the caller counts. `aim` is given only if it is not the middle.
 */
export type Limits = {
  readonly nominal: number
  readonly limits: readonly [low: number, high: number] | null
  readonly aim?: number
}

type Toleranced = Required<Limits> & { readonly text: string }

/** Adds the aim: the middle of the limits (`whole` makes it a countable one), or the nominal if there are no limits. */
export function withText({ nominal, limits, aim }: Limits, text: string, whole: (value: number) => number): Toleranced {
  const middle = limits ? whole((limits[0] + limits[1]) / 2) : nominal
  return { nominal, limits, aim: aim ?? middle, text }
}

export function fromRange(low: number, high: number, text: string): Parsed<Limits> {
  if (low > high)
    return refused(
      `the limits of "${text}" are the wrong way around`,
      'write the smaller one first, like 0.120 to 0.125',
    )
  if (low === high) return noRoom(text)
  return parsed({ nominal: Math.round((low + high) / 2), limits: [low, high] })
}

export function fromPlusMinus(nominal: number, deviation: number, text: string): Parsed<Limits> {
  if (deviation === 0) return noRoom(text)
  if (deviation < 0)
    return refused(
      `the tolerance of "${text}" is negative`,
      'write one number without a sign after ±, like 0.125 ±0.005',
    )
  return parsed({ nominal, limits: [nominal - deviation, nominal + deviation] })
}

/** Upper and lower deviation in either order; both may be on one side of the nominal. */
export function fromDeviations(nominal: number, first: number, second: number, text: string): Parsed<Limits> {
  if (first === second) return noRoom(text)
  return parsed({ nominal, limits: [nominal + Math.min(first, second), nominal + Math.max(first, second)] })
}

/** Half a tolerance: the drawing must give the other side; it is not guessed. */
export function needsBoth(
  written: { readonly form: 'least' | 'one-deviation'; readonly nominal: string },
  text: string,
): Parsed<never> {
  if (written.form === 'least')
    return refused(`"${text}" has no upper limit`, `write both limits, like ${written.nominal} to …`)
  return refused(
    `"${text}" has a tolerance on one side only`,
    'write both sides, like 0.125 +0.003 -0, or both limits, like 0.120 to 0.125',
  )
}

const noRoom = (text: string): Parsed<never> =>
  refused(`the limits of "${text}" are the same number`, 'leave room between the limits, or leave the tolerance out')
