import type { Fault } from '../moves/trace.ts'
import type { Length, Units } from '../units/length.ts'

/** The result of a list of moves on a job, neutral. Lengths pm, angles degrees. */
export type ReplayReport = {
  readonly units: Units
  readonly proven: boolean
  /** The list of moves. */
  readonly file: string
  readonly features: readonly ReplayedFeature[]
}

export type ReplayedFeature =
  | {
      readonly name: string
      readonly status: 'replayed'
      readonly proven: boolean
      readonly saved: boolean
      /** What the part would be, a line for each dimension that does not hold. */
      readonly outcome: readonly string[]
      readonly beside: readonly {
        readonly side: string
        readonly along: Length
        readonly deep: Length
        readonly maybe: boolean
      }[]
      readonly sizes: readonly ReplayedSize[]
      readonly faults: readonly ReplayedFault[]
      readonly heavy: readonly HeavyCut[]
    }
  | { readonly name: string; readonly status: 'not in the list' | 'refused'; readonly why: string }

/** A number, and its text for a person. */
export type ShownNumber = { readonly value: number; readonly text: string }

export type ReplayedSize = {
  readonly id: string
  readonly label: string
  readonly aim: ShownNumber
  readonly limits: readonly [ShownNumber, ShownNumber] | null
  readonly surely: ShownNumber | null
  readonly possibly: ShownNumber | null
  readonly verdict: string
  /** It fails only with some backlash. */
  readonly maybe: boolean
}

/** The line of a move in the list, and what it does. */
export type ListedMove = { readonly line: number; readonly does: string }

export type ReplayedFault = {
  readonly kind: Fault['kind']
  /** Null for a fault found at the end. */
  readonly move: ListedMove | null
  readonly by: ShownNumber | null
  readonly say: string
}

type HeavyCut = {
  readonly move: ListedMove
  readonly takes: Length
  readonly most: Length
  readonly say: string
}
