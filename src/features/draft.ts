import type { Code } from '../diagnostics/codes.ts'
import type { Instruments } from '../lathe/instruments.ts'
import type { Cuts } from '../moves/cuts.ts'
import type { Form } from '../moves/form.ts'
import type { Remedy } from '../moves/offer.ts'
import type { Region, WantedDimension } from '../moves/operation.ts'
import type { Step, Part as Work } from '../moves/part.ts'
import type { Placing, Touch } from '../moves/placing.ts'
import type { LayoutLine } from '../moves/stated.ts'
import type { Prose } from '../phrase/phrase.ts'
import type { Tool } from '../tools/tool.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'
import type { Feature } from './feature.ts'

/** A step of the part with its place along the work, pm from the free end. */
export type PlacedStep = Step & { readonly start: Length; readonly end: Length }

/** What every kind of feature may use. */
export type Bench = {
  readonly units: Units
  readonly work: 'one-off' | 'repeat'
  readonly part: Work
  readonly steps: readonly PlacedStep[]
  readonly tools: Readonly<Record<string, Tool>>
  /** The carriage shows no reading: where it moves the tool along, it goes to the scribed lines by eye. */
  readonly carriageByEye: boolean
  /** What sizes are taken with, and how far it may be off. */
  readonly instruments: Instruments
}

/**
 * A feature with its numbers worked out and its tool chosen, before the dials are considered. Lengths pm, d = −radius
 * in forms.
 */
export type Draft = {
  readonly feature: Feature
  readonly tool: Tool
  readonly undersize: Length | null
  readonly surface: Length
  /** Where the plan expects the tool's reference point with all dials at zero; the replay finds it for itself. */
  readonly zero: { readonly fromEnd: Length; readonly diameter: Length }
  readonly wanted: Form
  /**
   * The part of it that must be cut at least, if the drawing leaves something open: corners may be anywhere between
   * sharp and the largest radius allowed.
   */
  readonly atLeast?: Form
  readonly region: Region
  readonly dimensions: readonly WantedDimension[]
  readonly cuts: Cuts
  /** The compound angle that this way of cutting needs, whatever the lathe's is. */
  readonly angle?: Degrees
  readonly drawn: readonly Prose[]
  readonly layout: readonly LayoutLine[]
  readonly placing: Placing
  readonly touch: Touch
  readonly notes: readonly Prose[]
  /**
   * Only of steps that are roughed under the form of a feature, by another tool than finishes it: what they must leave on its flanks, along the work, and
   * the form that is finished. Nothing of the steps is on the drawing, so nothing of them is measured or inspected.
   */
  readonly roughs?: { readonly sides: Length; readonly finisher: string; readonly form: Form }
}

/** Why a feature cannot be cut as asked, and what would allow it. One sentence each, no final period. */
export type Refusal = Remedy & { readonly code: Code; readonly reason: Prose }

export type Drafted = { readonly ok: true; readonly draft: Draft } | { readonly ok: false; readonly refusal: Refusal }

export const refuse = (code: Code, reason: Prose, remedy: Prose): Drafted => ({
  ok: false,
  refusal: { code, reason, remedy },
})
