import type { Made, Scene } from './asks/ask.ts'
import { ASKS } from './asks/registry.ts'
import type { Blank } from './blank.ts'
import { HIDE_WORDS, type HideWord } from './words.ts'

export type Placed = Blank & { readonly place: Made['place'] }

/** The blanks of one sheet, in the order in which they stand on paper. */
export const blanksOf = (scene: Scene, hide: readonly HideWord[]): readonly Placed[] => {
  const made = HIDE_WORDS.filter((word) => hide.includes(word)).flatMap((word) => ASKS[word].make(scene))
  const placed = made.filter(({ place }) => 'step' in place).sort((a, b) => stepOf(a) - stepOf(b))
  const asked = made.filter(({ place }) => 'question' in place)
  return [...placed, ...asked].map((one, i, all) => ({
    ...one,
    outOf: one.outOf ?? 1,
    number: i + 1,
    follows: [...one.follows, ...fromShift(one, all.slice(0, i))],
  }))
}

/** How far along the work stands before the reading that it makes. */
const stepOf = ({ place }: Made): number => ('step' in place ? place.step + (place.part === 'shift' ? 0 : 0.5) : 0)

/** A reading along the work follows from how far the tool is shifted. */
const fromShift = ({ facts, right }: Made, before: readonly Made[]): Blank['follows'] => {
  if (facts.sort !== 'reading' || facts.axis !== 'along') return []
  const factor = (facts.scale.reads === 'diameter' ? 2 : 1) / Math.cos((facts.angle * Math.PI) / 180)
  return before.flatMap((one) =>
    one.facts.sort === 'worked' && one.facts.formula === 'shift'
      ? [{ id: one.id, factor, plus: (right as number) - factor * (one.right as number) }]
      : [],
  )
}
