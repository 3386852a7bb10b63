/** On every sheet, before anything else: shop practice, and what to do before the first step. */
export const cautionsFor = (held: string): readonly string[] => [
  'Safety glasses on. No rings, watch, gloves or loose sleeves; long hair tied back.',
  held === 'between centers' || held === 'mandrel' ? DOG : KEY,
  'Rigid set-up, short overhang, bit out no more than it must. Reduced speed.',
  'STOP the spindle to measure. Chips: a brush and a stopped spindle, never a hand.',
  "The machine's manual, the shop's rules, local codes and a qualified supervisor come before this sheet.",
]

const KEY = 'Take the key out of the chuck every time. Turn the work by hand once before power.'

/** Common practice, no source. */
const DOG = 'Dog tail free, center oiled. Turn the work by hand once before power.'

/** A screw does not hold a slide back: an edge that pulls itself in takes up the lost motion by itself. */
export const PULLS_IN =
  'Brass and aluminum can pull a tool with positive rake into the work through the backlash: snug the gibs, use zero rake.'
