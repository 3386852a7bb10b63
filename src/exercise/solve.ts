import { readable } from '../lathe/lathe.ts'

import type { Facts, ReadingFacts, Right } from './blank.ts'
import { FORMULAS } from './formulas.ts'

/**
 * What a learner gets who does everything right: from the facts alone, apart from the planner. A blank is only made
 * where both come to the same.
 */
export const solve = (facts: Facts): Right | null => {
  switch (facts.sort) {
    case 'reading':
      return readingFor(facts)
    case 'worked':
      return FORMULAS[facts.formula](facts.given)
    default:
      // What is chosen, or put in order, is not worked out.
      return null
  }
}

/** pm of reading, on a mark that can be read. */
const readingFor = ({ scale, travel, angle }: ReadingFacts): number => {
  const slide = travel / Math.cos((angle * Math.PI) / 180)
  const reading = scale.reads === 'diameter' ? 2 * slide : slide
  return Math.round(reading / readable(scale)) * readable(scale)
}
