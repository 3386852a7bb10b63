import type { Scale } from '../lathe/lathe.ts'
import type { Slide } from '../moves/operation.ts'
import type { Length, Units } from '../units/length.ts'
import type { Formula } from './formulas.ts'

/** What a learner works an answer out from: nothing but what stands on the sheet. pm, degrees. */
export type Facts = ReadingFacts | WorkedFacts | ChoiceFacts | OrderFacts | MovesFacts

export type ReadingFacts = {
  readonly sort: 'reading'
  readonly slide: Slide
  readonly scale: Scale
  /** Square to the axis (deep) or along it: where the tool is to come to, from its zero. */
  readonly axis: 'deep' | 'along'
  readonly travel: Length
  /** Of the slide, from the direction of the travel. Degrees. */
  readonly angle: number
  /** The straight edge and the groove that it cuts; null for any other. */
  readonly tool: Length | null
  readonly width: Length | null
  /** The last roughing pass, where this is the finish. */
  readonly rough: Length | null
  /** By how much the travel is more than the sheet has it, for what was measured at the stop; null where nothing was. */
  readonly correction: Length | null
  readonly units: Units
}

/** A size that is worked out by a formula from what is given. pm, degrees. */
export type WorkedFacts = {
  readonly sort: 'worked'
  readonly formula: Formula
  readonly given: Readonly<Record<string, number>>
  /** Of the answer. */
  readonly unit: 'length' | 'count' | 'rpm'
  readonly units: Units
}

/** A letter or a number among those that stand on the sheet. */
type ChoiceFacts = { readonly sort: 'choice'; readonly units: Units }

/** Lines to put in order: of each letter, the moves that it stands for. */
type OrderFacts = {
  readonly sort: 'order'
  readonly feature: number
  readonly lines: Readonly<Record<string, readonly number[]>>
  readonly units: Units
}

/** A list of moves: what it takes the place of in the moves of a feature, from one to another, and what goes along the work. */
export type MovesFacts = {
  readonly sort: 'moves'
  readonly feature: number
  readonly first: number
  readonly last: number
  readonly slide: Slide
  readonly units: Units
}

/** One place to write in, with what is right there. */
export type Blank = {
  /** Of the answer form; unique on the sheet. */
  readonly id: string
  /** As it is numbered on paper. */
  readonly number: number
  readonly outOf: number
  /** What is asked, in words. */
  readonly asks: string
  readonly facts: Facts
  /** In the units of its facts: pm of reading or of length, degrees, rpm; or words. */
  readonly right: Right
  /** Either way. */
  readonly tolerance: number
  /** The right answer as it is printed, how far it may be off, and how it is worked out. */
  readonly key: string
  readonly within: string
  readonly working: string
  /** From an earlier answer: its value × factor + plus. */
  readonly follows: readonly Follows[]
  /** The move of an operation that the answer turns. */
  readonly move: { readonly feature: number; readonly index: number } | null
  /** What may be chosen, where it is a choice. */
  readonly choices?: readonly string[]
}
export type Right = number | string | readonly string[]
export type Follows = { readonly id: string; readonly factor: number; readonly plus: number }
