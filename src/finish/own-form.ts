import { offForm } from '../judge/room.ts'
import type { Instrument } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import { type Corrected, finishedAt, finishStep, type Shop } from './measured.ts'

/** Lengths that are one figure. Places along the work are not sizes. */
export const SIZES: ReadonlySet<Instrument> = new Set<Instrument>([
  'width',
  'depth',
  'bottomDiameter',
  'root',
  'radius',
])

/** Sizes within a nanometer are the same. */
const SLACK: Length = 1000

/**
 * A corrected form need not be better than the sheet's own plan. There each place was rounded by itself, and the effect of half a mark on a size was
 * accepted. A zero that is off by a part of a mark moves all places together by up to half a mark more. So a size without limits may be off by as much
 * as in the sheet's own plan and by the effect of half a mark; so may its ridges; and the form may be off nowhere by more than that half mark beyond
 * what every plan may be. `marks`: a whole mark if somebody uses the nearest row of a table, which may be half a step from the measured size.
 */
export const asGoodAsItsSheet = (
  shop: Shop,
  { operation, trace }: Pick<Corrected, 'operation' | 'trace'>,
  marks: 0.5 | 1,
): boolean => {
  const { gone, left, mark } = offForm(shop.lathe, operation, shop.progress, trace)
  if (Math.max(gone, left) > 2 * marks * mark.deep + SLACK) return false
  const { planned, ridges, halves } = ownOf(shop)
  const taller = (ridge: Length, i: number) => ridge > (planned.ridges?.[i] ?? 0) + 2 * marks * ridges[i]! + SLACK
  if (trace.ridges?.some(taller)) return false
  return shop.operation.dimensions.every(({ id, aim, limits }, i) => {
    const [size, own] = [sizeOf(trace, i), sizeOf(planned, i)]
    if (limits !== null || !SIZES.has(id) || size === null || own === null) return true
    return Math.abs(size - aim) <= Math.abs(own - aim) + 2 * marks * halves[i]! + SLACK
  })
}

/** The sheet's own plan, and the effect of half a mark of depth on each of its ridges and sizes, pm. */
type Own = {
  readonly planned: OperationTrace
  readonly ridges: readonly Length[]
  readonly halves: readonly Length[]
}

/** Kept per shop: it is needed many times and always the same. */
const asked = new WeakMap<Shop, Own>()

const ownOf = (shop: Shop): Own => {
  const known = asked.get(shop)
  if (known !== undefined) return known
  const step = finishStep(shop)
  const planned = finishedAt(shop, 0, 0).trace
  const others = [step, -step].map((off) => finishedAt(shop, off, 0).trace)
  const most = (of: (trace: OperationTrace) => number | null): Length =>
    Math.max(...others.map((other) => Math.abs((of(other) ?? 0) - (of(planned) ?? 0))))
  const own: Own = {
    planned,
    ridges: (planned.ridges ?? []).map((_, i) => most(({ ridges }) => ridges?.[i] ?? null)),
    halves: shop.operation.dimensions.map((_, i) => most((trace) => sizeOf(trace, i))),
  }
  asked.set(shop, own)
  return own
}

const sizeOf = ({ sizes }: OperationTrace, index: number): number | null => sizes[index]?.surely ?? null
