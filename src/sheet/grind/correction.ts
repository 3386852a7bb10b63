import type { GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Length, Units } from '../../units/length.ts'
import { SHAPE_WORDS } from './shapes.ts'
import { deepest } from './words.ts'

/** Without rake one line serves all forms; with rake each shape has its own. */
export const corrections = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  if (deepest(facts).rakeInUse === 0) return [['none: without rake in use what is ground is what is cut']]
  const of = (value: Length) => length('depth', value, units)
  return facts.flatMap(({ form, shape }) => SHAPE_WORDS[shape].correction(form, of, units))
}
