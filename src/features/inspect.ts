import type { Check } from '../moves/inspection.ts'
import type { Bench, Draft } from './draft.ts'
import type { Sizes } from './inspection.ts'
import { kindOf } from './registry.ts'

/** A finished size: as replayed, and its limits on the drawing. pm, or degrees. */
type Finished = {
  readonly id: string
  readonly planned: number
  readonly low: number
  readonly high: number
  readonly limits: readonly [number, number] | null
}

/** How a finished feature is inspected: instruments, planned sizes, limits. */
export function inspectFeature(bench: Bench, draft: Draft, finished: readonly Finished[]): Check[] {
  const find = (id: string): Finished | undefined => finished.find((size) => size.id === id)
  const cut = (id: string): number | null => {
    const one = find(id)
    return one === undefined ? null : Math.max(one.high - one.planned, one.planned - one.low)
  }
  const sizes: Sizes = { planned: (id) => find(id)?.planned ?? null, limits: (id) => find(id)?.limits ?? null, cut }
  return kindOf(draft.feature).inspect({ bench, draft, sizes }, draft.feature)
}
