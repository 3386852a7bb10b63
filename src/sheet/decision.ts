import type { Check, Decision } from '../moves/inspection.ts'

/** Which readings accept a size, and which reject it; in between neither is proved. pm, or degrees. */
export type Zones = {
  /** Null: the instrument is too coarse to prove it. */
  readonly accept: readonly [low: number, high: number] | null
  readonly rejectUnder: number
  readonly rejectOver: number
}

/**
 * Proved: the reading lies inside the limits by U, or outside them by U (ISO 14253-1:1998, as it is told, with U of k = 2).
 * The edition of 2017 asks for 95 % of conformity, which on one limit is 0.82 of that U: the stricter is taken, as nobody
 * at a bench has more than the plus or minus of the instrument. Simple acceptance (ASME B89.7.3.1): the limits
 * themselves. Null: there are no limits, or nothing at hand takes it.
 */
export const zonesOf = (decision: Decision, { limits, by }: Pick<Check, 'limits' | 'by'>): Zones | null => {
  if (limits === null || !by) return null
  const guard = decision === 'prove' ? by.within : 0
  const [low, high] = [limits[0] + guard, limits[1] - guard]
  return {
    accept: low <= high ? [low, high] : null,
    rejectUnder: limits[0] - guard,
    rejectOver: limits[1] + guard,
  }
}
