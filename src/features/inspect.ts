import type { Check } from '../moves/inspection.ts'
import type { Bench, Draft } from './draft.ts'
import { inspectGroove } from './groove/inspect.ts'
import type { Sizes } from './inspection.ts'
import { inspectConcave, inspectCorner } from './radius/inspect.ts'
import { inspectVGroove } from './v-groove/inspect.ts'

/** A finished size: as replayed, and what the drawing allows. pm, or degrees. */
type Finished = { readonly id: string; readonly planned: number; readonly limits: readonly [number, number] | null }

/** How a finished feature is inspected: with what, planned, limits. A new kind is one line here. */
export function inspectFeature(bench: Bench, draft: Draft, finished: readonly Finished[]): Check[] {
  const find = (id: string): Finished | undefined => finished.find((size) => size.id === id)
  const sizes: Sizes = { planned: (id) => find(id)?.planned ?? null, limits: (id) => find(id)?.limits ?? null }
  const inspected = { bench, draft, sizes }
  const { feature } = draft
  switch (feature.kind) {
    case 'groove':
      return inspectGroove(inspected, feature)
    case 'v-groove':
      return inspectVGroove(inspected, feature)
    case 'radius':
      return feature.shape === 'concave' ? inspectConcave(inspected, feature) : inspectCorner(inspected, feature)
  }
}
