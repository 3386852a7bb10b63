import type { Length } from '../units/length.ts'
import { type Corrected, finishedAt, type Shop } from './measured.ts'
import { type Trouble, troubleIn } from './trouble.ts'
import { withAcross } from './width.ts'

/** By how many readable steps the finish goes deeper, and the feed across further, than written. */
export type Choice = { readonly deeper: number; readonly across: number }

/** How many readable steps on either side of the first choice are tried, of both slides. */
export const NEARBY = 3

type Tried = Choice & { readonly corrected: Corrected; readonly trouble: Trouble | null }

/**
 * The readings that the table on the sheet gives (`told`), if their replay passes. Otherwise those that come nearest to the drawing (`own`). Otherwise
 * the nearest readings that pass. If none passes: `own` with its trouble. `drawn` is the shop as on the sheet, `real` has the tool as it was found.
 */
export const firstProved = (
  drawn: Shop,
  real: Shop,
  measured: Length,
  { told, own }: { readonly told: Choice | null; readonly own: Choice },
): Tried => {
  const tried = ({ deeper, across }: Choice, marks: 0.5 | 1 = 0.5): Tried => {
    const operation = withAcross(real, across)
    const corrected = finishedAt({ ...real, operation }, measured - real.stop.expected, deeper)
    return { deeper, across, corrected, trouble: troubleIn(drawn, corrected, marks) }
  }
  const onPaper = told === null ? null : tried(told, 1)
  if (onPaper?.trouble === null) return onPaper
  const first = tried(own)
  if (first.trouble === null) return first
  for (const choice of around(real, own)) {
    const one = tried(choice)
    if (one.trouble === null) return one
  }
  return first
}

/** Every pair of readings nearby except the middle, the nearest first; of two equally near the shallower, then the narrower. */
export const around = (shop: Shop, { deeper, across }: Choice): readonly Choice[] => {
  const steps = Array.from({ length: 2 * NEARBY + 1 }, (_, i) => i - NEARBY)
  const along = movesAcross(shop) ? steps : [0]
  return steps
    .flatMap((deep) => along.map((wide) => ({ deep, wide })))
    .filter(({ deep, wide }) => deep !== 0 || wide !== 0)
    .sort((a, b) => Math.abs(a.deep) + Math.abs(a.wide) - Math.abs(b.deep) - Math.abs(b.wide))
    .map(({ deep, wide }) => ({ deeper: deeper + deep, across: across + wide }))
}

const movesAcross = (shop: Shop): boolean => withAcross(shop, 1) !== shop.operation
