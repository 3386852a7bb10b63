import type { Form } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import { type Bench, see } from './bench.ts'
import { excess, TOLERANCE } from './form/compare.ts'
import { swept } from './form/sweep.ts'
import type { Ways } from './ways.ts'

/** The tool behind its edge must never meet the work, the jaws or the center. */
export const checkShank = (bench: Bench, index: number, ways: Ways): void => {
  const { edge } = bench.operation
  const [left, right] = bench.ends
  let [low, high, deepest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const [a, b] of ways) {
    low = Math.min(low, a.z, b.z)
    high = Math.max(high, a.z, b.z)
    deepest = Math.max(deepest, a.d, b.d)
  }
  checkObstacles(bench, index, low, high)
  if (deepest - edge.reach <= bench.top) return
  const deep = excess(swept(flat(left, right, -edge.reach), ways, index), bench.before.surely)
  if (deep !== null && deep.by > TOLERANCE) {
    see(bench, 'shank-or-obstacle', index, deep.by, 'The edge goes in deeper than it reaches.')
    return
  }
  const struck = excess(swept(flat(...bench.body, -edge.reach), ways, index), bench.surely)
  if (struck !== null && struck.by > TOLERANCE) {
    see(bench, 'shank-or-obstacle', index, struck.by, 'The shank of the tool runs into the work.')
  }
}

const flat = (from: Length, to: Length, e: Length): Form => [
  { from, to, curve: { kind: 'line', z0: from, d0: e, z1: to, d1: e }, step: -1 },
]

/** The chuck's jaws with their clearance, and a center in the free end. The reference point moves from `low` to `high`. */
export const checkObstacles = (bench: Bench, index: number, low: Length, high: Length): void => {
  const { setup, lathe, body } = bench
  const right = high + body[1]
  const left = low + body[0]
  const near = setup.jaws === null ? 0 : right - (setup.jaws - lathe.jawClearance)
  if (near > TOLERANCE) see(bench, 'shank-or-obstacle', index, near, 'The tool comes too near the jaws.')
  if (setup.tailstockCenter && left < -TOLERANCE) {
    see(bench, 'shank-or-obstacle', index, -left, 'The tool is past the free end, where the center is.')
  }
}
