import type { Scale } from '../lathe/lathe.ts'
import type { Operation } from '../moves/operation.ts'

/** The operation with the compound at another angle; the tool is brought to its place and touches with the compound swung so. */
export const swungTo = (angle: number, operation: Operation): Operation => ({ ...operation, angle })

/** Slide travel of a count, pm. */
export const step = (scale: Scale): number => {
  const reading = scale.kind === 'dial' ? scale.graduation * scale.readTo : scale.resolution
  return scale.reads === 'diameter' ? reading / 2 : reading
}
