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
  // What is worked out first stands first: readings follow from it.
  return [...asked, ...placed].map((one, i, all) => ({
    ...one,
    outOf: one.outOf ?? 1,
    number: i + 1,
    follows: [...one.follows, ...fromWorked(one, all.slice(0, i))],
  }))
}

/** In a step: a reading follows from what is shifted. */
const PLACE = { shift: 0, reading: 0.1, turns: 0.1, mark: 0.2 } as const

/** How far along the work stands before the reading that it makes. */
const stepOf = ({ place }: Made): number => ('step' in place ? place.step + PLACE[place.part] : 0)

/** A reading along the work follows from how far the tool is shifted, a finish from how deep it is worked out. */
const fromWorked = ({ id: own, facts, right, move }: Made, before: readonly Made[]): Blank['follows'] => {
  if (facts.sort === 'worked' && facts.formula === 'overPins')
    return overWidth(own, facts.given, right as number, before)
  if (facts.sort !== 'reading' || move === null) return []
  const dial = (facts.scale.reads === 'diameter' ? 2 : 1) / Math.cos((facts.angle * Math.PI) / 180)
  return before.flatMap(({ id, facts: earlier, right: value }): Blank['follows'] => {
    if (earlier.sort !== 'worked' || typeof value !== 'number' || typeof right !== 'number') return []
    const factor = (FROM[`${earlier.formula} ${facts.axis}`] ?? 0) * dial
    // Only the finish comes to it; a roughing pass is chosen.
    const finish = facts.axis === 'along' || facts.rough !== null
    return factor === 0 || !finish ? [] : [{ id, factor, plus: right - factor * value }]
  })
}

/** How much the travel grows with what was worked out. */
const FROM: Readonly<Record<string, number>> = {
  'shift along': 1,
  'bottomDiameter deep': -1 / 2,
  'depthBelow deep': 1,
  'segmentDepth deep': 1,
  'vDepth deep': 1,
}

/** Over pins, from a width that was worked out: a V that is wider lets them in by the tangent of half its angle. */
const overWidth = (
  own: string,
  { angle = 0 }: Readonly<Record<string, number>>,
  right: number,
  before: readonly Made[],
): Blank['follows'] =>
  before.flatMap(({ id, facts, right: width }): Blank['follows'] => {
    const same = facts.sort === 'worked' && facts.formula === 'vWidth' && id.split('.')[0] === own.split('.')[0]
    const factor = -1 / Math.tan((angle * Math.PI) / 360)
    return same ? [{ id, factor, plus: right - factor * (width as number) }] : []
  })
