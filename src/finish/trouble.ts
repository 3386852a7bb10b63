import { offForm } from '../judge/room.ts'
import type { Instrument, WantedDimension } from '../moves/operation.ts'
import type { Fault } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import type { Corrected, Shop } from './measured.ts'
import { asGoodAsItsSheet, SIZES } from './own-form.ts'

export type Trouble =
  | { readonly why: 'no-width' }
  /** The measured size is past the limits of the drawing; `by` in pm. */
  | { readonly why: 'past'; readonly id: 'bottomDiameter' | 'width'; readonly limit: Length; readonly by: Length }
  /** No reading of the dials brings it within the limits. */
  | { readonly why: 'outside'; readonly dimension: WantedDimension; readonly size: number; readonly by: number }
  /** Every size with limits is within them, but the form is not. Names the size without limits that is furthest from the drawing. */
  | { readonly why: 'form'; readonly dimension: WantedDimension; readonly size: number; readonly by: number }
  | { readonly why: 'fault'; readonly fault: Fault }

/** A limit missed by a nanometer is met. */
const SLACK: Length = 1000

/** Why the replay does not accept it; null if it does. Limits on the drawing decide, not half a mark around their middle. `marks`: see own-form.ts. */
export const troubleIn = (
  shop: Shop,
  { operation, trace, faults }: Pick<Corrected, 'operation' | 'trace' | 'faults'>,
  marks: 0.5 | 1 = 0.5,
): Trouble | null => {
  const { lathe, progress, operation: drawn } = shop
  const sizes = drawn.dimensions.map((dimension, index) => ({ dimension, size: trace.sizes[index]?.surely ?? null }))
  for (const { dimension, size } of sizes) {
    if (size === null || dimension.limits === null) continue
    const [low, high] = dimension.limits
    const by = Math.max(low - size, size - high)
    if (by > (dimension.id === 'angle' ? 1e-9 : SLACK)) return { why: 'outside', dimension, size, by }
  }
  const limited = new Set<Instrument>(drawn.dimensions.flatMap(({ id, limits }) => (limits === null ? [] : [id])))
  const byLimits =
    limited.has('width') && (['depth', 'bottomDiameter', 'radius'] as const).some((id) => limited.has(id))
  const fault = faults.find(({ kind }) => !OF_THE_FORM.has(kind))
  if (fault !== undefined) return { why: 'fault', fault }
  const ridge = faults.find(({ kind }) => kind === 'ridge')
  if (faults.length === 0 || (byLimits && ridge === undefined)) return null
  const { gone, left } = offForm(lathe, operation, progress, trace)
  if (gone === 0 && left === 0 && ridge === undefined) return null
  if (asGoodAsItsSheet(shop, { operation, trace }, marks)) return null
  if (ridge !== undefined) return { why: 'fault', fault: ridge }
  const off = sizes.flatMap(({ dimension, size }) =>
    size === null || dimension.limits !== null || !SIZES.has(dimension.id)
      ? []
      : [{ dimension, size, by: Math.abs(size - dimension.aim) }],
  )
  const most = off.toSorted((a, b) => b.by - a.by)[0]
  return most === undefined ? { why: 'fault', fault: faults[0]! } : { why: 'form', ...most }
}

const OF_THE_FORM: ReadonlySet<Fault['kind']> = new Set<Fault['kind']>(['outside-form', 'metal-left', 'ridge'])
