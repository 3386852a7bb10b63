import type { Lathe, Scale } from '../lathe/lathe.ts'
import type { Operation } from '../moves/operation.ts'

/**
 * The same moves on a lathe whose compound and carriage have exactly their stated lost motion, no less: their dials
 * have no lost motion, and their readings are the places of the slide. A replay over every lost motion shows what is
 * sure; this one shows what the largest of them measures.
 */
export function lagging(lathe: Lathe, operation: Operation): { readonly lathe: Lathe; readonly operation: Operation } {
  const { compound, carriage } = lathe
  const behindCompound = laggingMoves(operation, 'compound', compound.scale)
  return {
    lathe: {
      ...lathe,
      compound: { ...compound, scale: withoutLostMotion(compound.scale) },
      carriage: carriage === null ? null : withoutLostMotion(carriage),
    },
    operation: carriage === null ? behindCompound : laggingMoves(behindCompound, 'carriage', carriage),
  }
}

const withoutLostMotion = (scale: Scale): Scale => (scale.kind === 'readout' ? scale : { ...scale, backlash: 0 })

function laggingMoves(operation: Operation, slide: 'compound' | 'carriage', scale: Scale): Operation {
  if (scale.kind === 'readout') return operation
  const lost = scale.backlash / (scale.graduation * scale.readTo)
  let at = 0
  const moves = operation.moves.map((move) => {
    if (move.slide !== slide || typeof move.count !== 'number') return move
    at = move.action === 'zero' ? 0 : Math.min(Math.max(at, move.count), move.count + lost)
    return { ...move, count: at }
  })
  return { ...operation, moves }
}
