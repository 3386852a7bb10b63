import type { Lathe } from '../lathe/lathe.ts'
import type { Operation } from '../moves/operation.ts'

/**
 * The same moves on a lathe whose compound has exactly its stated lost motion, no less: its dial without lost motion, its readings where the slide
 * then stands. A replay over every lost motion says what is sure; this says what the worst of them measures.
 */
export function lagging(lathe: Lathe, operation: Operation): { readonly lathe: Lathe; readonly operation: Operation } {
  const { scale } = lathe.compound
  if (scale.kind === 'readout') return { lathe, operation }
  const lost = scale.backlash / (scale.graduation * scale.readTo)
  let at = 0
  const moves = operation.moves.map((move) => {
    if (move.slide !== 'compound' || typeof move.count !== 'number') return move
    at = move.action === 'zero' ? 0 : Math.min(Math.max(at, move.count), move.count + lost)
    return { ...move, count: at }
  })
  const compound = { ...lathe.compound, scale: { ...scale, backlash: 0 } }
  return { lathe: { ...lathe, compound }, operation: { ...operation, moves } }
}
