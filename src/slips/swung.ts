import type { Lathe, Scale } from '../lathe/lathe.ts'
import type { Operation } from '../moves/operation.ts'

/**
 * The operation with the compound at another angle. Its zeros are set by what the tool touches, so they are taken at that angle too: where
 * the surface is touched with the compound short of 0, going on to 0 carries the tool in or out by another part of that.
 */
export function swungTo(angle: number, operation: Operation, { compound }: Lathe): Operation {
  const { zero } = operation
  const carried = touchedAt(operation) * step(compound.scale) * (sine(angle) - sine(operation.angle))
  return { ...operation, angle, zero: { ...zero, diameter: zero.diameter + 2 * carried } }
}

/** Where the compound stands, in counts from its 0, when the cross-feed is set to zero on the surface. */
function touchedAt({ moves }: Operation): number {
  const at = moves.findIndex(({ action, slide }) => action === 'zero' && slide === 'cross-feed')
  const before = moves.slice(0, Math.max(at, 0)).filter(({ slide }) => slide === 'compound')
  const zeroed = before.findLastIndex(({ action }) => action === 'zero')
  return before.slice(zeroed + 1).findLast(({ count }) => typeof count === 'number')?.count ?? 0
}

const sine = (angle: number): number => Math.sin((angle * Math.PI) / 180)

/** Slide travel of a count, pm. */
export const step = (scale: Scale): number => {
  const reading = scale.kind === 'dial' ? scale.graduation * scale.readTo : scale.resolution
  return scale.reads === 'diameter' ? reading / 2 : reading
}
