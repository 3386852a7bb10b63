import { stepTravel } from '../dials/travel.ts'
import type { Refusal } from '../features/draft.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Prose } from '../phrase/phrase.ts'
import { about, exact, say } from '../phrase/say.ts'
import { labelOf } from '../plan/labels.ts'
import type { Length, Units } from '../units/length.ts'

/**
 * A size that the drawing asks for and that could not be measured on the replayed form proves nothing. Null if all
 * sizes are found, whatever the backlash.
 */
export function notFound(units: Units, lathe: Lathe, operation: Operation, { sizes }: OperationTrace): Refusal | null {
  const there = (at: number): boolean => [sizes[at]?.surely, sizes[at]?.possibly].every((one) => Number.isFinite(one))
  const missing = operation.dimensions.find((_, at) => !there(at))
  if (missing === undefined) return null
  return (
    tooShallow(units, lathe, operation) ?? {
      code: 'no-size',
      reason: say`the replay finds no ${labelOf(missing.id)} on the finished form${at(units, missing.atDiameter)}`,
      remedy: 'check the dimensions of the feature against each other and against the stock',
    }
  )
}

const at = (units: Units, diameter: Length | undefined): Prose =>
  diameter === undefined ? '' : say` at ${exact('drawing', diameter, units)} diameter`

/** For a form less than half a mark deep, the nearest reading is the surface. */
function tooShallow(units: Units, { crossFeed }: Lathe, { dimensions }: Operation): Refusal | null {
  const deep = dimensions.find(({ id }) => id === 'depth')?.aim
  const mark = stepTravel(crossFeed)
  if (deep === undefined || deep > mark / 2 + 1000) return null
  return {
    code: 'too-shallow',
    reason: say`it is ${exact('drawing', deep, units)} deep, and a mark of the cross-feed is ${about('planned', mark, units, units === 'inch' ? 4 : 3)}: no reading comes nearer to it than the surface`,
    remedy: 'check the depth and its unit; else a cross-feed that reads finer cuts it',
  }
}
