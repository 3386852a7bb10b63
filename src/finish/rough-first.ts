import type { Move, Operation } from '../moves/operation.ts'
import { replayNext } from '../replay/replay.ts'
import { newProgram, type Program, toPlace } from '../sequence/program.ts'
import { type Side, sideTo } from '../sequence/side.ts'
import type { Length } from '../units/length.ts'
import { finishStep, type Shop } from './measured.ts'
import type { Findings, Remaining } from './remaining.ts'
import { bottomWanted } from './stop.ts'
import { troubleIn } from './trouble.ts'

type Found = Extract<Remaining, { ok: true }>
/** `put in`: how many moves of roughing are put in after the two that come back from the stop. */
export type Roughed = { readonly found: Remaining; readonly added: number }

/** What comes back from a stop before anything else: the cross-feed, and the spindle where it is started there. */
export const comeBack = ({ moves }: Operation, { at }: Shop['stop']): number =>
  moves[at + 2]?.action === 'start' ? 2 : 1

/** The first move of the roughing: behind the start, or what brings the tool in before it. */
const roughBegins = ({ moves }: Operation): number => {
  const start = moves.findIndex(({ action }) => action === 'start')
  if (moves[start - 1]?.purpose !== 'approach') return start + 1
  return moves[start - 2]?.slide === 'compound' && moves[start - 2]!.purpose === 'to-place' ? start - 2 : start - 1
}

/**
 * If roughing stopped so far short that the finish would take more than one pass may, the roughing is done again, with each reading further by the
 * error of the zero. Then as much is left for the finish as was planned. Replayed from the measured form, with a stop of its own to measure.
 */
export const roughedFirst = (shop: Shop, bottom: Length, found: Found): Roughed => {
  if (!tooMuchLeft(shop, bottom)) return { found, added: 0 }
  const { lathe, setup, progress, stop } = shop
  const put = roughAgain({ ...shop, operation: found.operation }, found.findings)
  const { moves } = found.operation
  const at = stop.at + 1 + comeBack(found.operation, stop)
  const operation: Operation = { ...found.operation, moves: [...moves.slice(0, at), ...put, ...moves.slice(at)] }
  const { trace, faults } = replayNext(lathe, setup, progress, operation, 0)
  const trouble = troubleIn(shop, { operation, trace, faults: faults.filter(({ move }) => move < 0 || move > stop.at) })
  return { found: trouble === null ? { ...found, operation, trace } : { ok: false, ...trouble }, added: put.length }
}

/**
 * More than one infeed, and at least a quarter of one more than was to be left: a thinner roughing pass would only rub. If no infeed is set: twice
 * what was to be left.
 */
const tooMuchLeft = ({ operation }: Shop, bottom: Length): boolean => {
  if (operation.passes === undefined) return false
  const { infeed, leave } = operation.passes
  const most = infeed === null ? 2 * leave : Math.max(infeed, leave + infeed / 4)
  return (bottom - bottomWanted(operation).aim) / 2 > most + 1000
}

/** The moves of the roughing again and the stop after them. They start with the tool backed out and the spindle turning. */
const roughAgain = (shop: Shop, { off }: Findings): readonly Move[] => {
  const { operation, stop } = shop
  const { moves } = operation
  const steps = Math.floor(off / 2 / finishStep(shop) + 1e-6)
  const from = roughBegins(operation)
  const first = leadIn(shop, from)
  const end = stop.at + 1 + comeBack(operation, stop)
  const again = moves
    .slice(from + first.instead, end)
    .map((move) =>
      move.action === 'feed-in' && move.slide === stop.by && move.purpose === 'rough'
        ? { ...move, count: move.count! + steps }
        : move,
    )
  return [...first.moves, ...again]
}

/** Back to where the roughing began, and how many of its first moves are not needed then. */
const leadIn = ({ lathe, operation, stop }: Shop, from: number): { moves: readonly Move[]; instead: number } => {
  const { moves, angle } = operation
  const none = { moves: [], instead: 0 }
  const own = moves.findIndex(({ slide, count }, i) => i >= from && slide !== 'cross-feed' && count != null)
  const slide = moves[own]?.slide
  if (own < 0 || own > stop.at || slide === undefined) return none
  const begins = own - from <= (slide === 'carriage' ? 1 : 0)
  // From where the tool is, past that place and forward onto it again.
  if (begins && moves[own]!.action === 'go-past') return none
  const stood = (end: number): number =>
    moves.slice(0, end).findLast((move) => move.slide === slide && move.count != null)?.count ?? 0
  const scale = slide === 'carriage' ? lathe.carriage! : lathe.compound.scale
  const program: Program = newProgram(operation.origin)
  program.at[slide] = stood(stop.at)
  const target = begins ? moves[own]!.count! : stood(from)
  const side: Side = slide === 'carriage' ? { slide, scale, angle: 0 } : { slide: 'compound', scale, angle }
  if (slide === 'carriage') sideTo(program, side, target)
  else toPlace(program, scale, target)
  return { moves: program.moves, instead: !begins ? 0 : slide === 'carriage' ? 3 : 1 }
}
