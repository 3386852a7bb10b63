import { stepTravel } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import type { Length } from '../units/length.ts'
import { dialMove, type Program } from './program.ts'

/** Where the metal begins, in readable steps; and how deep a plunge goes before the tool is drawn out, null: any. */
export type Pecks = { readonly contact: number; readonly most: number | null; readonly backOut: number }

/** Readable steps of the dial that a peck may go; a dial cannot feed less than a mark. */
export const peckSteps = (peck: Length | null, scale: Scale): number | null =>
  peck === null ? null : Math.max(1, Math.floor(peck / stepTravel(scale) + 1e-6))

/**
 * In to each of the readings, drawn out to clear the chip wherever the next one would be more than a peck from where
 * the tool was last clear.
 */
export function peckIn(program: Program, counts: readonly number[], pecks: Pecks, purpose: 'rough' | 'finish'): void {
  let from = pecks.contact
  counts.forEach((count, i) => {
    const before = counts[i - 1]
    if (before !== undefined && pecks.most !== null && count - from > pecks.most + 1e-6) {
      dialMove(program, 'back-out', 'cross-feed', pecks.backOut, 'clear-chip')
      from = before
    }
    dialMove(program, 'feed-in', 'cross-feed', count, purpose)
  })
}

/** Readings in runs, each no deeper than a layer: the slot is widened at its other places before it goes deeper. */
export function layersOf(counts: readonly number[], contact: number, layer: number | null): number[][] {
  if (layer === null) return [[...counts]]
  const layers: number[][] = []
  let top = contact
  for (const count of counts) {
    const now = layers.at(-1)
    if (now !== undefined && count - top <= layer + 1e-6) now.push(count)
    else {
      top = now?.at(-1) ?? contact
      layers.push([count])
    }
  }
  return layers
}
