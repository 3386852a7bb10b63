import { offForm } from '../judge/room.ts'
import type { Instrument } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'
import { type Corrected, finishedAt, finishStep, type Shop } from './measured.ts'

/** Lengths that can be told in one figure; places along the work are no sizes. */
export const SIZES: ReadonlySet<Instrument> = new Set<Instrument>([
  'width',
  'depth',
  'bottomDiameter',
  'root',
  'radius',
])

/** A size that stands to a nanometer is the same. */
const SLACK: Length = 1000

/**
 * A form is held no tighter than its own sheet. There each place was rounded by itself, and what half a mark does to a size was let stand. A zero
 * that is off by a part of a mark moves all places alike by up to half a mark more: so a size without limits may be off by what the sheet's own plan
 * is, and by what half a mark does to it; so may its ridges; and the form nowhere by more than that half mark beyond the room that any plan has.
 * `marks`: a whole mark where somebody goes by the nearest row of a table, for the row may be half of a step away from what was measured.
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

/** The sheet's own plan, and what half a mark of depth does to each of its ridges and sizes, pm. */
type Own = {
  readonly planned: OperationTrace
  readonly ridges: readonly Length[]
  readonly halves: readonly Length[]
}

/** Asked again and again of one shop, and always the same. */
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
