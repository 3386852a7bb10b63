import type { Edge, Form } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import { depthAt } from './form/curve.ts'
import { firstBeyond } from './form/insert.ts'

/** So much of the edge must be in the metal for it to count: a wall shaved on its whole height takes no more force than a thin chip. */
const SHARE = 1 / 4
const SAMPLES = 32

/** How deep a cut goes into a form, radially, over at least a quarter of the edge's width. pm; 0 where less of the edge cuts. */
export const takenAtOnce = (cut: Form, form: Form, { pieces }: Edge): Length => {
  const [from, to] = [cut[0]!.from, cut.at(-1)!.to]
  const share = SHARE * (pieces.at(-1)!.to - pieces[0]!.from)
  const gap = (to - from) / SAMPLES
  const deep = Array.from({ length: SAMPLES }, (_, i) => {
    const z = from + (i + 0.5) * gap
    const [after, before] = [depthOf(cut, z), depthOf(form, z)]
    return after === null || before === null ? 0 : Math.max(0, after - before)
  })
  return deep.toSorted((a, b) => b - a)[Math.min(SAMPLES, Math.max(1, Math.ceil(share / gap))) - 1]!
}

const depthOf = (form: Form, z: Length): Length | null => {
  const piece = form[firstBeyond(form, z)]
  return piece === undefined || piece.from > z ? null : depthAt(piece.curve, z)
}
