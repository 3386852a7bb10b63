import type { GrindFacts } from '../../moves/grinding.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Units } from '../../units/length.ts'
import { SHAPE_WORDS } from './shapes.ts'
import { deepest } from './words.ts'

/** The order of grinding, one line per step, with what to check before going on. Common practice, no source. */
export const orderOf = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  const main = deepest(facts)
  return SHAPE_WORDS[main.shape].order(facts, main, units)
}
