import type { Form } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import { depthAt } from '../replay/form/curve.ts'
import type { Length } from '../units/length.ts'

/** Nobody measures a smaller difference: a micrometer. */
export const SEEN: Length = 1_000_000

/** Metal left in the form: how high, how wide, and at which end of it. pm. */
export type Ridge = { readonly high: Length; readonly wide: Length; readonly side: 'tailstock' | 'headstock' | null }

/** Where the wrong form is higher than the planned one, and by how much. */
export function ridgeIn({ region }: Operation, planned: Form, wrong: Form): Ridge | null {
  const inside = [...planned, ...wrong].flatMap(({ from, to }) => [from, to])
  const ends = [region.from, ...inside, region.to]
  const cuts = [...new Set(ends)].filter((z) => z >= region.from && z <= region.to).sort((a, b) => a - b)
  const higher = cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i]!
    const high = depthIn(planned, (from + to) / 2) - depthIn(wrong, (from + to) / 2)
    return high > SEEN && to - from > SEEN ? [{ from, to, high }] : []
  })
  // Beside a high step nobody measures a hundredth of its height.
  const stretches = higher.filter(({ high }) => 100 * high > Math.max(...higher.map((one) => one.high)))
  if (stretches.length === 0) return null
  const [first, last] = [stretches[0]!, stretches.at(-1)!]
  return {
    high: Math.max(...stretches.map(({ high }) => high)),
    wide: stretches.reduce((sum, { from, to }) => sum + to - from, 0),
    side: sideOf(first.from - cuts[0]!, cuts.at(-1)! - last.to),
  }
}

const sideOf = (before: Length, behind: Length): Ridge['side'] => {
  if (Math.abs(before - behind) <= SEEN) return null
  return before < behind ? 'tailstock' : 'headstock'
}

const depthIn = (form: Form, z: Length): Length => {
  const piece = form.find(({ from, to }) => from <= z && z <= to)
  return piece === undefined ? 0 : depthAt(piece.curve, z)
}
