import type { Budgeted } from '../budget/budgeted.ts'
import type { Between } from '../finish/between.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Action, Operation, Purpose, Slide } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import type { Continues, PlannedPart, Spindle, StatedEdge } from '../plan/plan.ts'
import type { Length, Units } from '../units/length.ts'
import type { Drawing, PartDrawing } from './drawing.ts'
import type { GrindSheet } from './grind/grind.ts'
import type { FoldedPlace } from './places.ts'

export type Group = 'set up' | 'rough' | 'measure' | 'finish' | 'end'

/** One line of the sheet, one move of the hand. Numbered through the whole sheet from 1. */
export type SheetStep = {
  readonly number: number
  readonly feature: number
  readonly group: Group
  readonly action: Action
  readonly purpose: Purpose | null
  /** Of a take-up before its dial has a zero: how far forward at the least, in the units and the sense of the dial. */
  readonly atLeast?: number
  /** The same in marks, where the scale has marks. */
  readonly takeUp?: number
  readonly slide: Slide | null
  /** The slide or the thing that the hand goes to. */
  readonly thing: string
  readonly does: Phrase
  /** What it does to the work; may be empty. */
  readonly effect: Phrase
  /** Lines that belong under the step. */
  readonly more: readonly Phrase[]
  /** In the units and the sense of the slide's own scale; null where there is none. */
  readonly reading: number | null
  readonly turns: number | null
  readonly mark: number | null
  /** Where the tool's reference point is brought by eye, from the free end, where no dial says it. */
  readonly place?: Length
  /** On a stop to measure: what to finish at, by what is measured. */
  readonly corrections?: Corrections
  /** Likewise how far to feed across, by what the width measures. */
  readonly widthCorrections?: WidthCorrections
  /** On the last measuring: what the finishing pass, once more, can still take off. */
  readonly metalLeft?: MetalLeft
}

/** Readings to finish at for what the bottom measures; each row planned and replayed. Lengths are figures in the sheet's units. */
export type Corrections = {
  /** The outside diameter less the bottom's is looked up, not the bottom diameter alone. */
  readonly byDepth: boolean
  readonly expected: Figure
  readonly most: Figure
  readonly between: Between
  readonly rows: readonly {
    readonly measured: Figure
    readonly bottom: Figure
    readonly within: boolean | null
    readonly finishes: readonly {
      readonly step: number
      readonly reading: number
      readonly turns: number | null
      readonly mark: number | null
    }[]
  }[]
}

/** Readings of the compound for what the width measures; each row planned and replayed, also together with the rows for the bottom. */
export type WidthCorrections = {
  readonly expected: Figure
  readonly most: Figure
  readonly between: Between
  readonly rows: readonly {
    readonly measured: Figure
    readonly width: Figure
    readonly within: boolean | null
    readonly finishes: Corrections['rows'][number]['finishes']
  }[]
}

/** The finishing pass again, from one numbered step to another, with some of its steps further; proved by replay of one step further. */
export type MetalLeft = {
  readonly from: number
  readonly to: number
  readonly sizes: readonly {
    readonly measure: 'bottomDiameter' | 'outsideLessBottom' | 'width'
    /** There is metal left under or over `limit`; on the other side, beyond `past`, nothing saves it (null = no limits are given). */
    readonly when: 'under' | 'over'
    readonly limit: Figure
    readonly past: Figure | null
    readonly steps: readonly number[]
    /** How much further, in the units and the sense of the scale, for every `perStep` of the size. */
    readonly reading: number
    readonly perStep: Figure
  }[]
}

export type ProofLine = {
  readonly id: Budgeted['id']
  readonly label: string
  /** As drawn whatever goes wrong, and without limits: there is nothing to tell. */
  readonly settled: boolean
  readonly verdict: Budgeted['verdict']
  readonly planned: Figure
  readonly low: Figure
  readonly high: Figure
  readonly rss: Figure
  readonly limits: readonly [Figure, Figure] | null
  readonly spare: Figure | null
  /** In words; null where nothing that is stated changes it. */
  readonly worstCause: string | null
  /** What would make it hold; null where it does, or where no limits are given. */
  readonly remedy: Phrase | null
}

/** The same job with something done otherwise, and what the sizes that may not hold come to then. */
export type SheetGain = {
  readonly change: readonly string[]
  readonly set: readonly Phrase[]
  readonly holds: boolean
  readonly says: Phrase
  readonly sizes: readonly (Pick<ProofLine, 'id' | 'verdict' | 'planned' | 'low' | 'high' | 'rss'> & {
    /** Negative where it still may not hold. */
    readonly spare: Figure | null
  })[]
}

/** One size to take at the bench, with blanks beside it. Lengths and angles as figures. */
export type InspectionLine = {
  readonly id: string
  readonly label: string
  readonly using: Phrase
  readonly planned: Figure
  readonly limits: readonly [Figure, Figure] | null
  readonly pin: Figure | null
  readonly pair: readonly [Figure, Figure] | null
}

export type Labeled = { readonly label: string; readonly says: readonly Phrase[] }

export type SheetFeature = {
  readonly index: number
  readonly name: string
  readonly kind: string
} & (
  | {
      readonly status: 'planned'
      readonly why: string | null
      readonly heading: readonly Labeled[]
      readonly notes: readonly Phrase[]
      readonly warnings: readonly Phrase[]
      readonly tool: string
      readonly edge: StatedEdge
      readonly undersize: Length | null
      readonly compoundAngle: number
      readonly surface: Length
      readonly spindle: Spindle
      readonly zero: OperationTrace['zero']
      readonly placing: Operation['placing']
      readonly touch: Operation['touch']
      readonly lines: Operation['lines']
      readonly clear: Length
      /** Of a form that is stepped along: the ridge allowed, and the one that was measured. */
      readonly cusp: { readonly most: Length; readonly ridge: Length } | null
      readonly jawClearance: Length
      readonly sideFeed: 'compound' | 'carriage' | 'lines'
      readonly proof: { readonly replayed: Phrase; readonly lines: readonly ProofLine[] }
      /** What would make it hold, each tried by replay; only where it may not. */
      readonly gains?: readonly SheetGain[]
      readonly inspection: readonly InspectionLine[]
      /** Only where pictures are asked for. */
      readonly drawing?: Drawing
    }
  | {
      readonly status: 'refused'
      readonly code: string
      readonly reason: Phrase
      readonly remedy: Phrase
      readonly named?: { readonly tool: string; readonly edge: StatedEdge }
      readonly warnings: readonly Phrase[]
    }
)

/** Of one feature: what would be measured, and the mistake that measures so. */
export type SlipCard = {
  readonly feature: number
  readonly name: string
  readonly lines: readonly { readonly shows: Phrase; readonly mistake: string }[]
}

/** One fact, then and now; null where there was none, or is none. */
export type Change = { readonly what: string; readonly before: Phrase | null; readonly now: Phrase | null }

/** Steps that change in one way: their numbers today, and on the sheet that was kept. */
export type ChangedStep = Change & {
  readonly fate: 'changed' | 'came' | 'went'
  readonly numbers: readonly number[]
  readonly were: readonly number[]
  readonly thing: string
}

export type ChangedFeature = {
  readonly name: string
  readonly fate: 'stayed' | 'came' | 'went'
  readonly facts: readonly Change[]
  readonly steps: readonly ChangedStep[]
  readonly sizes: readonly Change[]
}

/** What is another thing than on a sheet that was kept. */
export type Changed = { readonly facts: readonly Change[]; readonly features: readonly ChangedFeature[] }

/** Everything that is printed, in order, with no layout, no units' spelling and no color decided. */
export type Sheet = {
  readonly title: string
  readonly drawingNumber: string | null
  /** Names what the sheet has the hand do (null where it has nothing to do); of what remains, the sheet that it goes on from (null where nobody knows its name). */
  readonly identity: string | null
  /** Only of what remains: the moves before it that it counts on. */
  readonly continues?: Continues
  readonly units: Units
  readonly lathe: Lathe
  readonly part: PlannedPart
  readonly heading: readonly Labeled[]
  readonly cautions: readonly string[]
  readonly orderReasons: readonly string[]
  readonly warnings: readonly { readonly feature: number | null; readonly code: string; readonly say: Phrase }[]
  readonly features: readonly SheetFeature[]
  readonly steps: readonly SheetStep[]
  /** Stretches of steps that a printer may tell in one line each; only where a form is stepped along. */
  readonly places?: readonly FoldedPlace[]
  /** The part in the machine; only where pictures are asked for. */
  readonly drawing?: PartDrawing
  /** How the tools are ground; only where it is asked for. */
  readonly grind?: GrindSheet
  /** What common mistakes would measure; only where it is asked for. */
  readonly slips?: readonly SlipCard[]
  /** What changed since a sheet that was kept; only where it is asked for. */
  readonly changed?: Changed
}
