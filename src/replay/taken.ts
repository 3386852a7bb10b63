import type { Edge, Form } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import { depthAt } from './form/curve.ts'
import { firstBeyond } from './form/insert.ts'

/** At least this part of the edge must be in the metal to count: shaving a wall over its whole height takes no more force than a thin chip. */
const SHARE = 1 / 4
const SAMPLES = 32

/** How deep a cut goes into a form, on the radius, over at least a quarter of the edge's width. pm; 0 if less of the edge cuts. */
export const takenAtOnce = (cut: Form, form: Form, { pieces }: Edge): Length => {
  const [from, to] = [cut[0]!.from, cut.at(-1)!.to]
  const share = SHARE * (pieces.at(-1)!.to - pieces[0]!.from)
  const gap = (to - from) / SAMPLES
  const deep = new Float64Array(SAMPLES)
  let [i, j] = [0, firstBeyond(form, from)]
  for (let sample = 0; sample < SAMPLES; sample++) {
    const z = from + (sample + 0.5) * gap
    while (i < cut.length && cut[i]!.to <= z) i++
    while (j < form.length && form[j]!.to <= z) j++
    const [after, before] = [cut[i], form[j]]
    if (after === undefined || before === undefined || after.from > z || before.from > z) continue
    deep[sample] = Math.max(0, depthAt(after.curve, z) - depthAt(before.curve, z))
  }
  return deep.sort()[SAMPLES - Math.min(SAMPLES, Math.max(1, Math.ceil(share / gap)))]!
}
