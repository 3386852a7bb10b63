import type { FormFacts, GrindFacts } from '../../moves/grinding.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import type { Length, Units } from '../../units/length.ts'

/** A depth as a figure. */
export type Shown = (value: Length) => Figure

/** What the grinding sheet prints for one shape only. */
export type ShapeWords = {
  /** The heading of a tool of this shape. */
  readonly called: string
  /**
   * The order of grinding, one line per step, with what to check before going on; `main` is the deepest of the forms.
   */
  readonly order: (facts: readonly GrindFacts[], main: GrindFacts, units: Units) => Phrase[]
  /**
   * With rake in use: what to grind so that the work is cut as drawn, and what a tool ground to the drawing would cut.
   */
  readonly correction: (form: FormFacts, of: Shown, units: Units) => Phrase[]
  /** Where a radius gauge is held. */
  readonly gaugeAt: string
  readonly measure: (main: GrindFacts, units: Units) => Phrase[]
}

/** For a form that is ground other than drawn: what else a tool ground to the drawing does. */
export const shallow = (form: FormFacts, of: Shown): Phrase => [
  'or it is ',
  of(form.shallow),
  ' shallow where it is as wide as drawn',
]

/** How to measure an edge with two corners or ends. */
export const LIGHTLY: Phrase = [
  'let the anvils only meet the edge, by the friction thimble: a hard turn chips the edge and marks the anvils',
]
