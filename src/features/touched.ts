import type { Form } from '../moves/form.ts'
import { say } from '../phrase/say.ts'
import type { Length } from '../units/length.ts'
import { type Bench, type Draft, type Drafted, refuse } from './draft.ts'
import { onCurve } from './on-curve.ts'
import { besideFace } from './shop.ts'

export const noRoomBeside = ({ tool }: Draft): Drafted =>
  refuse(
    'rough-tool',
    say`the steps leave no surface between the lines, and beside them there is no room to touch off tool "${tool.name}"`,
    'leave rough-tool out for this feature, or cut it before what is beside it (order:)',
  )

/** An opened form, touched off beside its lines where none of the features that are cut by then has taken the surface away. `edge`: of the tool that finishes it. */
export function touchedBeside(bench: Bench, draft: Draft, edge: Form, cut: readonly Draft['region'][]): Drafted {
  const { at } = draft.touch
  if (at === null || !('over' in at.against) || draft.roughs !== undefined) return { ok: true, draft }
  const over = freeBeside(bench, draft, edge, cut)
  if (over === null) return noRoomBeside(draft)
  return { ok: true, draft: { ...draft, touch: { ...draft.touch, at: { ...at, against: { over } } } } }
}

/** A stretch of the surface, without what is cut of it by then: as far as the tip finds all of itself over the surface, the first of what is left. */
export function touchedOver(bench: Bench, draft: Draft, edge: Form, cut: readonly Draft['region'][]): Draft {
  const { at } = draft.touch
  if (at === null || !('over' in at.against)) return draft
  const half = besideTip(bench, edge)
  let [from, to] = at.against.over
  for (const region of cut.toSorted((a, b) => a.from - b.from)) {
    if (region.to + half <= from || region.from - half >= to) continue
    if (region.from - half > from + half) to = region.from - half
    else from = region.to + half
  }
  return from > to ? draft : { ...draft, touch: { ...draft.touch, at: { ...at, against: { over: [from, to] } } } }
}

/** From the middle of the tip to a face beside it: half of what is level of the edge, and a little room. */
const besideTip = ({ units }: Bench, edge: Form): Length => {
  const deepest = Math.max(...edge.map(({ from, to, curve }) => onCurve(curve, (from + to) / 2)))
  const nose = edge.filter(({ from, to, curve }) => onCurve(curve, (from + to) / 2) >= deepest - 1)
  return (nose.at(-1)!.to - nose[0]!.from) / 2 + besideFace(units)
}

/** Where the tip may be over the surface beside the lines, the tailstock side first; null if there is no room for the edge on either side. */
export function freeBeside(
  bench: Bench,
  { region }: Draft,
  edge: Form,
  cut: readonly Draft['region'][],
): readonly [Length, Length] | null {
  const half = besideTip(bench, edge)
  const step = bench.steps.find(({ start, end }) => start <= region.from && end >= region.to)
  if (step === undefined) return null
  const [out, far] = [Math.min(step.end, bench.part.overhang), 4 * half]
  const others = cut.filter(({ from, to }) => to <= region.from || from >= region.to)
  const near = Math.max(step.start, region.from - far, ...others.flatMap(({ to }) => (to <= region.from ? [to] : [])))
  const end = Math.min(out, region.to + far, ...others.flatMap(({ from }) => (from >= region.to ? [from] : [])))
  const sides = [
    [near + half, region.from - half],
    [region.to + half, end - half],
  ] as const
  return sides.find(([from, to]) => to >= from) ?? null
}
