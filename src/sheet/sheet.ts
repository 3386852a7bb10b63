import type { Budgeted } from '../budget/budgeted.ts'
import type { Code } from '../diagnostics/codes.ts'
import type { Between } from '../finish/between.ts'
import type { InstrumentName } from '../lathe/instruments.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Decision } from '../moves/inspection.ts'
import type { Action, Instrument, Operation, Purpose, Slide } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import type { Continues, PlannedPart, Spindle, StatedEdge } from '../plan/plan.ts'
import type { Length, Units } from '../units/length.ts'
import type { Drawing, PartDrawing } from './drawing.ts'
import type { GrindSheet } from './grind/grind.ts'
import type { FoldedPlace } from './places.ts'
import type { SupervisedCheck } from './supervised.ts'

export type Group = 'set up' | 'rough' | 'measure' | 'finish' | 'end'

/** One line of the sheet, one move. Numbered through the whole sheet from 1. */
export type SheetStep = {
  readonly number: number
  readonly feature: number
  readonly group: Group
  readonly action: Action
  readonly purpose: Purpose | null
  /** For a take-up before its dial has a zero: how far forward at least, in the units and the sense of the dial. */
  readonly atLeast?: number
  /** The same in marks, if the scale has marks. */
  readonly takeUp?: number
  readonly slide: Slide | null
  /** The slide or the thing to move. */
  readonly thing: string
  /** What the hand does before that; said before it. */
  readonly first?: Phrase
  /** `does` for who knows the work, if that is much shorter. */
  readonly short?: Phrase
  readonly does: Phrase
  /** What it does to the work; may be empty. */
  readonly effect: Phrase
  /** Lines under the step. */
  readonly more: readonly Phrase[]
  /** Where a table is under the step: how many lines of `more` come before it. */
  readonly ownLines?: number
  /** In the units and the sense of the slide's own scale; null if there is no reading. */
  readonly reading: number | null
  readonly turns: number | null
  readonly mark: number | null
  /** Where the tool's reference point is brought by eye, from the free end, if no dial shows it. */
  readonly place?: Length
  /** Where the work is measured: what it should measure. The first lines of `more` tell the same. */
  readonly expected?: readonly Expected[]
  /** At a stop to measure: the tables in words. The lines of `more` tell the same. */
  readonly tables?: readonly StopTable[]
  /** At a stop to measure: the reading to finish at for each measured size. */
  readonly corrections?: Corrections
  /** In the same way how far to feed across for each measured width. */
  readonly widthCorrections?: WidthCorrections
  /** At the last measuring: what the finishing pass, repeated, can still take off. */
  readonly metalLeft?: MetalLeft
}

export type Expected = {
  readonly id: Instrument
  readonly label: string
  readonly size: Figure
  /** What it is taken with. */
  readonly by?: Phrase
  /** A place that is not taken from the free end, as the proof has it. */
  readonly elsewhere?: true
  /** Over which pins, and what is to be taken off the size over them. */
  readonly over?: Phrase
}

/** A table under a stop in words: what was measured, and the reading that follows from it. */
export type StopTable = {
  readonly by: 'outsideLessBottom' | 'bottomDiameter' | 'width'
  /** The lines of `more` that tell the same: the first of them, and how many. */
  readonly lines: { readonly from: number; readonly count: number }
  /** What was measured, which steps go to the reading, and what is expected. */
  readonly head: Phrase
  /** Which steps go to the reading: "step 25". */
  readonly at: Phrase
  readonly expected: Figure
  readonly rows: readonly { readonly keys: Phrase; readonly reading: Phrase }[]
  /** What to do between the rows, and beyond them. */
  readonly rules: readonly Phrase[]
  /** The same in a few words. */
  readonly short: readonly Phrase[]
}

/**
 * Readings to finish at for the measured bottom; each row planned and replayed. Lengths are figures in the sheet's
 * units.
 */
export type Corrections = {
  /** Rows are keyed by outside diameter minus bottom diameter, not by the bottom diameter alone. */
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

/**
 * Readings of the compound for the measured width; each row planned and replayed, also together with the rows for the
 * bottom.
 */
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

/**
 * The finishing pass again, from one numbered step to another, with some of its steps further; proved by replay of one
 * step further.
 */
export type MetalLeft = {
  readonly from: number
  readonly to: number
  readonly sizes: readonly {
    readonly measure: 'bottomDiameter' | 'outsideLessBottom' | 'width'
    /**
     * There is metal left under or over `limit`; on the other side, beyond `past`, the part is scrap (null = no limits
     * are given).
     */
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
  /** As drawn with every error, and without limits: there is nothing to print. */
  readonly settled: boolean
  readonly verdict: Budgeted['verdict']
  readonly planned: Figure
  readonly low: Figure
  readonly high: Figure
  readonly rss: Figure
  readonly limits: readonly [Figure, Figure] | null
  /** Measured and corrected at the stop, which verdict and spare are of; null where no correction changes it. */
  readonly measured: {
    readonly low: Figure
    readonly high: Figure
    readonly rss: Figure
    readonly worstCause: string | null
    readonly better: boolean
  } | null
  readonly spare: Figure | null
  /** In words; null if no stated error changes it. */
  readonly worstCause: string | null
  /** What would make it hold; null if it holds, or if no limits are given. */
  readonly remedy: Phrase | null
}

/** The same job with one thing changed, and the sizes that may not hold as they become then. */
export type SheetGain = {
  readonly change: readonly string[]
  readonly set: readonly Phrase[]
  readonly holds: boolean
  readonly says: Phrase
  readonly sizes: readonly (Pick<ProofLine, 'id' | 'verdict' | 'planned' | 'low' | 'high' | 'rss'> & {
    /** Negative if it still may not hold. */
    readonly spare: Figure | null
  })[]
}

/** One size to measure at the bench, with blanks beside it. Lengths and angles as figures. */
export type InspectionLine = {
  readonly id: string
  readonly label: string
  readonly using: Phrase
  /** Nothing at hand takes it: there is nothing to fill in. */
  readonly asked: boolean
  /** What takes it, and how far that may be off; null also where it is judged by eye. */
  readonly by: { readonly with: InstrumentName; readonly within: Figure } | null
  readonly planned: Figure
  readonly limits: readonly [Figure, Figure] | null
  /** Which readings accept it and which reject it; null without limits, or without an instrument. */
  readonly decision: {
    readonly accept: readonly [Figure, Figure] | null
    readonly rejectUnder: Figure
    readonly rejectOver: Figure
    readonly says: Phrase
  } | null
  readonly pin: Figure | null
  readonly pair: readonly [Figure, Figure] | null
}

export type Labeled = { readonly label: string; readonly says: readonly Phrase[] }

/** What a line of a heading is about, whatever its label: printers choose and join lines by it. */
export type About =
  | 'material'
  | 'sources'
  | 'held'
  | 'part'
  | 'lathe'
  | 'units'
  | 'dials'
  | 'why'
  | 'drawn'
  | 'surface'
  | 'tool'
  | 'speed'
  | 'cross-feed'
  | 'compound'
  | 'carriage'
export type HeadingLine = Labeled & { readonly about: About }
/** What a heading says of one thing; nothing where it has no such line. */
export const saysOf = (heading: readonly HeadingLine[], about: About): readonly Phrase[] =>
  heading.find((line) => line.about === about)?.says ?? []

export type SheetFeature = {
  readonly index: number
  readonly name: string
  readonly kind: string
} & (
  | {
      readonly status: 'planned'
      readonly why: string | null
      readonly heading: readonly HeadingLine[]
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
      /** For a form cut step by step: the ridge allowed, and the ridge measured. */
      readonly cusp: { readonly most: Length; readonly ridge: Length } | null
      readonly jawClearance: Length
      readonly sideFeed: 'compound' | 'carriage' | 'lines'
      readonly proof: { readonly replayed: Phrase; readonly lines: readonly ProofLine[] }
      /** What would make it hold, each tried by replay; only if it may not hold. */
      readonly gains?: readonly SheetGain[]
      readonly inspection: readonly InspectionLine[]
      /** Only where pictures are asked for. */
      readonly drawing?: Drawing
    }
  | {
      readonly status: 'refused'
      readonly code: Code
      readonly reason: Phrase
      readonly remedy: Phrase
      readonly named?: { readonly tool: string; readonly edge: StatedEdge }
      readonly warnings: readonly Phrase[]
    }
)

/** For one feature: what would be measured, and the mistake that measures so. */
export type SlipCard = {
  readonly feature: number
  readonly name: string
  readonly lines: readonly { readonly shows: Phrase; readonly mistake: string }[]
  /** Signs of mistakes that no replay can show: what is seen or felt, and what it comes from. */
  readonly signs: readonly Phrase[]
}

/** One fact, then and now; null if there was none, or is none. */
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

/** The differences from a sheet that was kept. */
export type Changed = { readonly facts: readonly Change[]; readonly features: readonly ChangedFeature[] }

/** Everything that is printed, in order; layout, spelling of units and color are left to the printers. */
export type Sheet = {
  readonly title: string
  readonly drawingNumber: string | null
  /**
   * A name for the instructions on the sheet (null if there are none); for what remains of a feature, the name of the
   * sheet that it continues (null if it is not known).
   */
  readonly identity: string | null
  /** Only for what remains: the moves before it that it relies on. */
  readonly continues?: Continues
  readonly units: Units
  readonly lathe: Lathe
  readonly part: PlannedPart
  readonly heading: readonly HeadingLine[]
  readonly cautions: readonly string[]
  readonly decision: Decision
  readonly orderReasons: readonly string[]
  readonly warnings: readonly { readonly feature: number | null; readonly code: Code; readonly say: Phrase }[]
  readonly features: readonly SheetFeature[]
  readonly steps: readonly SheetStep[]
  /** Stretches of steps that a printer may print on one line each; only if a form is cut step by step. */
  readonly places?: readonly FoldedPlace[]
  /** The part in the machine; only if pictures are wanted. */
  readonly drawing?: PartDrawing
  /** How the tools are ground; only on request. */
  readonly grind?: GrindSheet
  /** What a learner does first and an instructor signs, before some of the steps; only on request. */
  readonly supervised?: readonly SupervisedCheck[]
  /** What common mistakes would measure; only on request. */
  readonly slips?: readonly SlipCard[]
  /** What changed since a sheet that was kept; only on request. */
  readonly changed?: Changed
}
