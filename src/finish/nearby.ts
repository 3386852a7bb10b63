import type { Length } from '../units/length.ts'
import { type Corrected, finishedAt, type Shop } from './measured.ts'
import { type Trouble, troubleIn } from './trouble.ts'
import { withAcross } from './width.ts'

/** Readable steps that the finish goes deeper, and that the feed across goes further, than written. */
export type Choice = { readonly deeper: number; readonly across: number }

/** How many readable steps on either side of the first choice are tried, of both slides. */
export const NEARBY = 3

type Tried = Choice & { readonly corrected: Corrected; readonly trouble: Trouble | null }

/**
 * What the sheet tells on paper (`told`) where its replay proves it, else what comes nearest to the drawing (`own`), else the nearest of the readings
 * nearby that is proved; where none is, `own` with its trouble. `drawn` is the shop that the sheet was made for, `real` the one with the tool as it was found.
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

/** Every pair of readings nearby but the middle itself, the nearest first; of two as near the shallower, then the narrower. */
const around = (shop: Shop, { deeper, across }: Choice): readonly Choice[] => {
  const steps = Array.from({ length: 2 * NEARBY + 1 }, (_, i) => i - NEARBY)
  const along = movesAcross(shop) ? steps : [0]
  return steps
    .flatMap((deep) => along.map((wide) => ({ deep, wide })))
    .filter(({ deep, wide }) => deep !== 0 || wide !== 0)
    .sort((a, b) => Math.abs(a.deep) + Math.abs(a.wide) - Math.abs(b.deep) - Math.abs(b.wide))
    .map(({ deep, wide }) => ({ deeper: deeper + deep, across: across + wide }))
}

const movesAcross = (shop: Shop): boolean => withAcross(shop, 1) !== shop.operation
