import type { Blank } from '../exercise/blank.ts'
import type { Shop } from '../exercise/manifest.ts'
import { heavyCuts } from '../judge/heavy.ts'
import { type Judgment, judge } from '../judge/judge.ts'
import { outcome } from '../judge/say.ts'
import { readable } from '../lathe/lathe.ts'
import type { Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { type Progress, replayNext, startOf } from '../replay/replay.ts'
import type { Units } from '../units/length.ts'
import type { FormPicture } from './grades.ts'

/** What came of a list of moves. */
export type Cut = { readonly proven: boolean; readonly says: readonly string[]; readonly picture: FormPicture }

/** A reading in place of the sheet's: which blank, and what was answered, pm of reading. */
export type Changed = { readonly blank: Blank; readonly value: number }

/** Replays of one learner's sheet with other readings in it, each on the part as the features before have left it. */
export type Replays = {
  readonly cut: (feature: number, changed: readonly Changed[]) => Cut | null
  /** Another list in place of the moves from `first` to `last`. */
  readonly listed: (feature: number, first: number, last: number, moves: Operation['moves']) => Cut | null
  /** Whether the moves in another order prove; each list holds the moves of one line. */
  readonly ordered: (feature: number, lines: readonly (readonly number[])[]) => boolean | null
}

export const replaysOf = ({ lathe, setup, operations }: Shop, units: Units): Replays => {
  const ready = new Map<number, { before: Progress; trace: OperationTrace }>()
  const planned = (feature: number): { before: Progress; trace: OperationTrace } => {
    const known = ready.get(feature)
    if (known !== undefined) return known
    let before = startOf(setup)
    for (const [i, operation] of operations.slice(0, feature).entries())
      if (operation !== null) before = replayNext(lathe, setup, before, operation, i).after
    const made = { before, trace: replayNext(lathe, setup, before, operations[feature]!, feature).trace }
    ready.set(feature, made)
    return made
  }
  const run = (feature: number, own: Operation, moves: Operation['moves']): Cut => {
    const { before, trace: plannedTrace } = planned(feature)
    const operation: Operation = { ...own, moves }
    const { trace, faults } = replayNext(lathe, setup, before, operation, feature)
    const judgment = judge(lathe, operation, before, trace, faults)
    const heavy = heavyCuts({ operation, trace }, { operation: own, trace: plannedTrace })
    return {
      proven: judgment.proven && heavy.length === 0,
      says: saysOf(judgment, heavy.length > 0, units),
      picture: {
        feature,
        name: own.name,
        before: before.surely,
        wanted: own.wanted,
        cut: trace.surely,
        region: own.region,
      },
    }
  }
  return {
    cut: (feature, changed) => {
      const own = operations[feature]
      return own == null ? null : run(feature, own, movesWith(own.moves, changed))
    },
    listed: (feature, first, last, moves) => {
      const own = operations[feature]
      return own == null ? null : run(feature, own, own.moves.toSpliced(first, last - first + 1, ...moves))
    },
    ordered: (feature, lines) => {
      const own = operations[feature]
      return own == null ? null : run(feature, own, movesInOrder(own.moves, lines)).proven
    },
  }
}

/** The moves of the lines change places among themselves; all others stay. */
const movesInOrder = (moves: Operation['moves'], lines: readonly (readonly number[])[]): Operation['moves'] => {
  const listed = lines.flat()
  const places = [...listed].sort((a, b) => a - b)
  return moves.map((move, i) => {
    const place = places.indexOf(i)
    return place < 0 ? move : moves[listed[place]!]!
  })
}

const movesWith = (moves: Operation['moves'], changed: readonly Changed[]): Operation['moves'] =>
  moves.map((move, index) => {
    const one = changed.find(({ blank }) => blank.move?.index === index)
    if (one === undefined || one.blank.facts.sort !== 'reading') return move
    const count = one.value / readable(one.blank.facts.scale)
    return { ...move, count: Math.abs(count - Math.round(count)) < 1e-6 ? Math.round(count) : count }
  })

const saysOf = (judgment: Judgment, heavy: boolean, units: Units): string[] => {
  const lines = outcome(judgment, units).map((line) => line.replace(', cannot be saved', '; the part is scrap'))
  if (lines.length > 0 || judgment.proven) return heavy && lines.length === 0 ? [TOO_MUCH] : lines
  return judgment.faults.slice(0, 1).map(({ say }) => say)
}

const TOO_MUCH = 'the form is right, but more is taken at once than a pass may take'
