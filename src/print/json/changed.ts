import type { Phrase } from '../../phrase/phrase.ts'
import { words } from '../../phrase/words.ts'
import type { Change, Changed } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'

/** The list of changes as data: in words as the dial shows them, with the numbers of the steps. */
export const changedData = ({ facts, features }: Changed, units: Units) => {
  const text = (phrase: Phrase | null): string | null => (phrase === null ? null : words(phrase, units))
  const change = ({ what, before, now }: Change) => ({ what, before: text(before), now: text(now) })
  return {
    facts: facts.map(change),
    features: features.map((feature) => ({
      name: feature.name,
      fate: feature.fate,
      facts: feature.facts.map(change),
      steps: feature.steps.map((step) => ({
        fate: step.fate,
        numbers: step.numbers,
        were: step.were,
        thing: step.thing,
        ...change(step),
      })),
      sizes: feature.sizes.map(change),
    })),
  }
}
