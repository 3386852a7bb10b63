import type { Span } from '../diagnostics/diagnostic.ts'
import type { Heavy } from '../judge/heavy.ts'
import type { Judgment } from '../judge/judge.ts'
import type { Move, Operation } from '../moves/operation.ts'

/** The result of a feature of the job under a list of moves. */
export type Replayed =
  | {
      readonly name: string
      readonly status: 'replayed'
      readonly operation: Operation
      readonly judgment: Judgment
      readonly heavy: readonly Heavy[]
    }
  | { readonly name: string; readonly status: 'not in the list' | 'refused'; readonly why: string }

/** The place of a move in the list. */
export type LineOf = (move: Move) => Span
