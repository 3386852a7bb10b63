import type { Arc, Form, Piece } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Box, shrunk } from './form/dilate.ts'
import { cutInto, SLIVER } from './form/insert.ts'
import { kept } from './form/kept.ts'

/**
 * The least that must be cut out of the part. Where a form is cut step by step, ridges may stay on its arcs: `ridges` has the height allowed on each
 * arc, square to it, in their order. On a floor that is fed across no ridge may stay.
 */
export const leastForms = (
  { wanted: most, atLeast, cusp }: Operation,
  before: Form,
  box: Box,
  ridges: readonly Length[],
): readonly Form[] => {
  const wanted = atLeast ?? most
  return leasts(before, wanted, [box.along, box.deep, cusp === undefined ? 0 : 1, ...ridges], () =>
    leastOf(before, wanted, box, cusp === undefined ? null : ridges),
  )
}
const leasts = kept<readonly Form[]>()

const leastOf = (before: Form, wanted: Form, box: Box, ridges: readonly Length[] | null): readonly Form[] => {
  if (ridges === null) return [less(before, wanted, box)]
  const floor = wanted.filter(({ curve }) => curve.kind === 'line' && curve.d0 === curve.d1)
  const round = wanted.flatMap(({ curve, ...piece }) => (curve.kind === 'arc' ? [{ ...piece, curve }] : []))
  const arcs = round.map((piece, i) => standingOut(piece, ridges[i] ?? 0))
  return [less(before, arcs, box), ...(floor.length === 0 ? [] : [less(before, floor, box)])]
}

/** Only in the region of the form and half a step beside it. Elsewhere nothing needs to be cut. */
const less = (before: Form, form: Form, box: Box): Form => {
  if (form.length === 0) return []
  const [first, last] = [form[0]!.from - box.along, form.at(-1)!.to + box.along]
  const target = before.filter(({ from, to }) => to > first - box.along - SLIVER && from < last + box.along + SLIVER)
  cutInto(target, form)
  return shrunk(target, box).flatMap(({ from, to, curve, step }) => {
    const [near, far] = [Math.max(from, first), Math.min(to, last)]
    return far - near > SLIVER ? [{ from: near, to: far, curve, step }] : []
  })
}

/** The arc that the tops of ridges may touch: smaller by the ridge in a hollow, larger on a corner. */
const standingOut = ({ from, to, curve, step }: Piece & { readonly curve: Arc }, ridge: Length): Piece => {
  const r = Math.max(0, curve.r - curve.side * ridge)
  const ends = [Math.max(from, curve.zc - r), Math.min(to, curve.zc + r)] as const
  return { from: ends[0], to: Math.max(ends[0], ends[1]), curve: { ...curve, r }, step }
}
