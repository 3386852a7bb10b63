import type { Budgeted } from '../budget/budgeted.ts'
import type { Code } from '../diagnostics/codes.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { GrindFacts } from '../moves/grinding.ts'
import type { Check, Decision } from '../moves/inspection.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { LayoutLine, Pace, Spindle, StatedEdge } from '../moves/stated.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Prose } from '../phrase/phrase.ts'
import type { Progress } from '../replay/replay.ts'
import type { Length, Units } from '../units/length.ts'

export type { Code } from '../diagnostics/codes.ts'
export type { LayoutLine, Spindle, StatedEdge } from '../moves/stated.ts'

/** What `compile` gives to the sheet: neutral facts; no kind of feature or shape of tool must be known to read them. */
export type Plan = {
  readonly title: string
  readonly drawingNumber: string | null
  readonly units: Units
  readonly lathe: Lathe
  readonly part: PlannedPart
  /** In the order of work; refused features at the place where they would have been. */
  readonly features: readonly FeaturePlan[]
  /** Why this order, one sentence per reason. Empty for a single feature. */
  readonly orderReasons: readonly string[]
  readonly warnings: readonly Warning[]
  /** What an inspection accepts; absent: what is proved. */
  readonly decision?: Decision
  readonly setup: Setup
}

export type PlannedPart = {
  readonly material: string
  readonly held: string
  readonly overhang: Length
  /** Length of the headstock end that the dog takes; absent if it is not given. */
  readonly dog?: Length
  /** What the material asks for: a coolant, and cautions of its own. */
  /** Millionths of its length that the metal grows a degree Celsius; left out where no table has it. */
  readonly growth?: number
  readonly care?: { readonly coolant: Care; readonly cautions: readonly Care[] }
  readonly steps: readonly {
    readonly name: string
    readonly diameter: Length
    readonly measured: Length
    /** false: the diameter is the drawing's, nobody has measured it yet. */
    readonly measuredGiven?: boolean
    readonly from: Length
    readonly to: Length
  }[]
}

/** `source` null: common practice, no source. */
type Care = { readonly says: string; readonly source: string | null }

/** `feature` is the index in `Plan.features`, null = the whole job. */
export type Warning = {
  readonly feature: number | null
  readonly code: Code
  readonly say: Prose
  /** The warning without the remedy, if `say` includes one. */
  readonly wrong?: Prose
  /** Where in the job, the lathe or the toolbox the user can change it, and how. */
  readonly origin?: import('../diagnostics/diagnostic.ts').Origin
  readonly remedy?: Prose
}

/**
 * One change, or several together, that was planned, replayed and budgeted, and the sizes that may not hold as they
 * become with it.
 */
export type Gain = {
  readonly change: readonly string[]
  /** In words for the bench, and as keys of the job or the lathe file. */
  readonly say: readonly Prose[]
  readonly set: readonly Prose[]
  readonly sizes: readonly Budgeted[]
  /** True if every size of the feature then holds. */
  readonly holds: boolean
}

export type FeaturePlan =
  | {
      readonly status: 'planned'
      readonly name: string
      readonly kind: string
      readonly why: string | null
      /** As drawn, one short phrase per dimension: "5/32 ±0.005 wide", "0.070 +0.004 -0 deep". */
      readonly drawn: readonly Prose[]
      readonly tool: string
      readonly edge: StatedEdge
      /** Difference of the tool from the drawing, e.g. by how much it is undersize (pm); null if it does not apply. */
      readonly undersize: Length | null
      readonly spindle: Spindle
      readonly pace: Pace
      readonly layout: readonly LayoutLine[]
      /** Radial clearance asked for when the tool is backed out, and what moves it along the work. */
      readonly clear: Length
      readonly sideFeed: 'compound' | 'carriage' | 'lines'
      readonly operation: Operation
      readonly trace: OperationTrace
      /** The part before this operation. */
      readonly before: Progress
      readonly budget: readonly Budgeted[]
      /** What the stop corrects by what is measured there; absent where there is none. */
      readonly corrects?: { readonly bottom: boolean; readonly width: boolean }
      /** What would make it hold, if it may not. */
      readonly gains?: readonly Gain[]
      /** Sentences about this feature only: a flat that remains, a radius taken from the tool. */
      readonly notes: readonly Prose[]
      /** How the tool is ground for this form. */
      readonly ground?: GrindFacts
      /** How the finished feature is inspected; the sizes are the replayed ones. */
      readonly inspection?: readonly Check[]
    }
  | {
      readonly status: 'refused'
      readonly name: string
      readonly kind: string
      readonly code: Code
      /** One sentence each, no final period. */
      readonly reason: Prose
      readonly remedy: Prose
      /** The tool that the job names for it, as measured on its face. */
      readonly named?: { readonly tool: string; readonly edge: StatedEdge }
      /** If the tool only needs to be ground differently: which tool, and how. */
      readonly tool?: string
      readonly ground?: GrindFacts
      readonly origin: import('../diagnostics/diagnostic.ts').Origin
    }

/**
 * How the moves before the stop are known, and the reading at which the last roughing pass stopped, in the units and
 * the sense of its dial.
 */
export type Continues = {
  readonly from: 'job' | 'reading' | 'kept sheet'
  readonly roughedAt: number | null
}
