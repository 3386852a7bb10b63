import type { PlannedPart } from '../plan/plan.ts'

/** On every sheet, before anything else: shop practice, what to do before the first step, and what this material asks for. */
export const cautionsFor = ({ held, care }: Pick<PlannedPart, 'held' | 'care'>): readonly string[] => [
  'Safety glasses on. No rings, watch, gloves or loose sleeves; long hair tied back.',
  BY_HOLDING[held] ?? KEY,
  'Rigid set-up, short overhang, bit out no more than it must. Reduced speed.',
  'STOP the spindle to measure. Chips: a brush and a stopped spindle, never a hand.',
  ...(care?.cautions.map(({ says }) => says) ?? []),
  "The machine's manual, the shop's rules, local codes and a qualified supervisor come before this sheet.",
]

const BY_HAND = 'Turn the work by hand once before power.'
const KEY = `Take the key out of the chuck every time. ${BY_HAND}`

/**
 * Only what this holding has: a collet has no key. The dog tight: US Navy training manual 14345; the center greased:
 * bench-lathe maker's manual, and an older machine-shop course; its screw guarded, the collet: common practice, no
 * source.
 */
const BY_HOLDING: Readonly<Record<string, string>> = {
  chuck: KEY,
  collet: `Draw the collet up tight, its handle or wrench off. ${BY_HAND}`,
  'chuck and center': `Center greased, tailstock locked. ${KEY}`,
  'between centers': `Dog tight, its screw guarded, its tail free; center greased, tailstock locked. ${BY_HAND}`,
  mandrel: `Work tight on the mandrel, dog tight, its screw guarded; center greased, tailstock locked. ${BY_HAND}`,
}

/** What is asked once more before the spindle starts. */
export const beforeStart = (held: string): string =>
  held === 'between centers' || held === 'mandrel' ? 'dog free' : held === 'collet' ? 'collet tight' : 'key out'

/** A screw does not hold a slide back: an edge that pulls itself in takes up the lost motion by itself. */
export const PULLS_IN =
  'Brass and aluminum can pull a tool with positive rake into the work through the backlash: snug the gibs, use zero rake.'
