import type { Lathe } from '../lathe/lathe.ts'
import type { Move, Operation, Setup, WantedDimension } from '../moves/operation.ts'
import type { Before } from '../replay/bench.ts'
import { runOperation } from '../replay/run.ts'
import type { Length } from '../units/length.ts'
import type { Way } from './causes.ts'

/** Where the cut meets the surface on each side, pm from the free end. */
type Edges = Readonly<Record<'near' | 'far', Length | null>>

/**
 * When the tool is fed across by eye, the edge of the cut is brought to the line, not the tool: the carriage stops where that edge meets the line,
 * whatever error tool, touch or dial has. So each feed to a line ends earlier or later by the error that the edge of the replayed cut would have.
 * The error of the eye is an error of its own, and stays.
 */
export const broughtToLines = (
  lathe: Lathe,
  setup: Setup,
  operation: Operation,
  before: Before,
): ((way: Way) => Way) => {
  if (!operation.moves.some((move) => lineOf(move) !== null)) return (way) => way
  const planned = edgesOf(lathe, setup, { operation, before, shift: null })
  return (way) => {
    if (way.shift !== null && 'place' in way.shift) return way
    const there = edgesOf(lathe, setup, way)
    const moves = way.operation.moves.map((move) => {
      const line = lineOf(move)
      const [met, wanted] = line === null ? [null, null] : [there[line], planned[line]]
      return met === null || wanted === null ? move : { ...move, place: move.place! - (met - wanted) }
    })
    return { ...way, operation: { ...way.operation, moves } }
  }
}

/** Which side of the cut a move brings to its line. */
const lineOf = ({ action, place, purpose }: Move): 'near' | 'far' | null => {
  if (action !== 'feed-across' || place === undefined) return null
  return purpose === 'tailstock-line' ? 'near' : purpose === 'headstock-line' ? 'far' : null
}

const EDGES: readonly WantedDimension[] = (['near', 'far'] as const).map((id) => ({ id, aim: 0, limits: null }))

const edgesOf = (lathe: Lathe, setup: Setup, { operation, before, shift }: Way): Edges => {
  const seen = { ...operation, dimensions: EDGES }
  const [near, far] = runOperation(lathe, setup, seen, before, { rules: false, shift }).trace.sizes
  return { near: near!.surely, far: far!.surely }
}
