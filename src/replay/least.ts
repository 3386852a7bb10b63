import type { Form, Piece } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Box, shrunk } from './form/dilate.ts'
import { cutInto, SLIVER } from './form/insert.ts'
import { kept } from './form/kept.ts'

/**
 * The forms that must be cut at the least, out of the part as it was. Where a form is stepped along a ridge may stay on its arcs, as tall as
 * `ridges` say square to each of them in their order, but not on a floor that is fed across: that is held like any other.
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
  const arcs = wanted.filter(({ curve }) => curve.kind === 'arc').map((piece, i) => standingOut(piece, ridges[i] ?? 0))
  return [less(before, arcs, box), ...(floor.length === 0 ? [] : [less(before, floor, box)])]
}

/** Only where the form is wanted, and half a step beside it: everywhere else no less is cut than nothing. */
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

/** The arc that the tops of ridges may lie on: a hollow is so much smaller, a corner so much larger. */
const standingOut = ({ from, to, curve, step }: Piece, ridge: Length): Piece => {
  if (curve.kind !== 'arc') return { from, to, curve, step }
  const r = Math.max(0, curve.r - curve.side * ridge)
  const ends = [Math.max(from, curve.zc - r), Math.min(to, curve.zc + r)] as const
  return { from: ends[0], to: Math.max(ends[0], ends[1]), curve: { ...curve, r }, step }
}
