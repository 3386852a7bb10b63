import type { Form } from '../moves/form.ts'
import type { Instrument, Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { excess } from '../replay/form/compare.ts'
import { type Box, shrunk } from '../replay/form/dilate.ts'
import type { Length } from '../units/length.ts'
import type { Judged } from './judge.ts'

/**
 * A depth is measured at the deepest place. If every size holds and metal is left all the same, the form is too shallow
 * in another place: on a floor the depth of that place is reported, elsewhere the size that measures that place does
 * not hold.
 */
export const withShallow = (
  sizes: readonly Judged[],
  wanted: Form,
  operation: Operation,
  { surely }: OperationTrace,
  left: { readonly room: Box; readonly by: Length },
  maybe: boolean,
): readonly Judged[] => {
  if (sizes.some(({ verdict }) => verdict !== 'holds')) return sizes
  const short = excess(shrunk(wanted, { along: left.room.along, deep: 0 }), surely)
  const ids = new Set(sizes.map(({ id }) => id))
  const floor = short !== null && onFloor(wanted, operation, short.z)
  const blamed = floor ? DEPTHS : SHAPES.filter((id) => ids.has(id)).slice(0, 1)
  return sizes.map((one): Judged => {
    if (short === null) return one
    if (floor && one.id === 'flatness') return { ...one, verdict: 'left', maybe, by: 0, possibly: short.by }
    if (!blamed.includes(one.id)) return one
    // Reported once: for the size that has limits on the drawing.
    const reported = one.limits !== null || sizes.every(({ id, limits }) => limits === null || !DEPTHS.includes(id))
    const times = !reported ? 0 : one.id === 'bottomDiameter' ? 2 : 1
    const shallowest = one.aim + (one.id === 'bottomDiameter' ? 2 : -1) * short.by
    return { ...one, verdict: 'left', maybe, ...(floor ? { by: times * left.by, surely: shallowest } : { by: 0 }) }
  })
}

const DEPTHS: readonly Instrument[] = ['depth', 'bottomDiameter', 'legDown']
/** The first of these that the form has is blamed. */
const SHAPES: readonly Instrument[] = ['cornerRadius', 'radius', 'angle', 'width', 'depth', 'bottomDiameter']

/** Within a tenth of a millimeter of the greatest wanted depth. */
const LEVEL: Length = 100_000_000

const onFloor = (wanted: Form, { region }: Operation, z: Length): boolean => {
  const here = wanted.filter(({ from, to }) => to > region.from && from < region.to)
  const flat = (a: number, b: number): boolean => Math.abs(a - b) < LEVEL
  const lines = here.flatMap(({ from, to, curve }) =>
    curve.kind === 'line' && flat(curve.d0, curve.d1) && from <= z && z <= to ? [Math.max(curve.d0, curve.d1)] : [],
  )
  const deepest = Math.max(
    ...here.flatMap(({ curve }) => (curve.kind === 'line' ? [curve.d0, curve.d1] : [curve.dc + curve.r])),
  )
  return lines.some((d) => flat(d, deepest))
}
