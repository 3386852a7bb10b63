import type { Form, Piece } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { excess, overlap, TOLERANCE } from '../replay/form/compare.ts'
import type { Progress } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import type { Side } from './judge.ts'

/** Metal gone from the part beside a feature, with some backlash at least: how far along the work, and how deep, pm. */
export type Beside = { readonly side: Side; readonly along: Length; readonly deep: Length; readonly maybe: boolean }

/**
 * Metal gone beyond the room for the walls of the feature, where the part beside it has another diameter than the
 * feature.
 */
export const besideOf = (
  operation: Operation,
  before: Progress,
  { surely, possibly }: OperationTrace,
  allowed: Form,
): readonly Beside[] => {
  const { from, to } = operation.region
  const steps = before.surely.filter((piece) => !onSurface(piece, operation.surface))
  const on = (side: Side, least: Length, most: Length): readonly Beside[] => {
    const into = steps.flatMap((step) => between([step], least, most))
    const gone = (form: Form): boolean =>
      into.some((step) => (excess(between(form, step.from, step.to), allowed)?.by ?? 0) > TOLERANCE)
    if (!gone(possibly)) return []
    const [along, deep] = [overlap(possibly, into), excess(possibly, into)?.by ?? 0]
    return [{ side, along, deep, maybe: !gone(surely) }]
  }
  return [...on('tailstock', Number.NEGATIVE_INFINITY, from), ...on('headstock', to, Number.POSITIVE_INFINITY)]
}

const onSurface = ({ curve }: Piece, surface: Length): boolean =>
  curve.kind === 'line' && [curve.d0, curve.d1].every((d) => Math.abs(d + surface / 2) <= TOLERANCE)

const between = (form: Form, from: Length, to: Length): Form =>
  form
    .map((piece) => ({ ...piece, from: Math.max(from, piece.from), to: Math.min(to, piece.to) }))
    .filter((piece) => piece.from < piece.to)
