import type { Form } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import { type Bench, see } from './bench.ts'
import { excess, TOLERANCE } from './form/compare.ts'
import { swept } from './form/sweep.ts'
import type { Ways } from './ways.ts'

/** What of the tool behind its edge may never meet: the work, the jaws, the center. */
export const checkShank = (bench: Bench, index: number, ways: Ways): void => {
  const { edge } = bench.operation
  const ends = edge.pieces.flatMap(({ from, to }) => [from, to])
  const [left, right] = [Math.min(...ends), Math.max(...ends)]
  const places = ways.flat()
  checkObstacles(
    bench,
    index,
    places.map(({ z }) => z),
  )
  if (Math.max(...places.map(({ d }) => d)) - edge.reach <= bench.top) return
  const deep = excess(swept(flat(left, right, -edge.reach), ways, index), bench.before.surely)
  if (deep !== null && deep.by > TOLERANCE) {
    see(bench, 'shank-or-obstacle', index, deep.by, 'The edge goes in deeper than it reaches.')
    return
  }
  const { from, to } = edge.shank
  const struck = excess(swept(flat(Math.min(from, left), Math.max(to, right), -edge.reach), ways, index), bench.surely)
  if (struck !== null && struck.by > TOLERANCE) {
    see(bench, 'shank-or-obstacle', index, struck.by, 'The shank of the tool runs into the work.')
  }
}

const flat = (from: Length, to: Length, e: Length): Form => [
  { from, to, curve: { kind: 'line', z0: from, d0: e, z1: to, d1: e }, step: -1 },
]

/** The chuck's jaws with their clearance, and a center in the free end. */
export const checkObstacles = (bench: Bench, index: number, places: readonly Length[]): void => {
  const { operation, setup, lathe } = bench
  const { pieces, shank } = operation.edge
  const right = Math.max(...places) + Math.max(shank.to, ...pieces.map(({ to }) => to))
  const left = Math.min(...places) + Math.min(shank.from, ...pieces.map(({ from }) => from))
  const near = setup.jaws === null ? 0 : right - (setup.jaws - lathe.jawClearance)
  if (near > TOLERANCE) see(bench, 'shank-or-obstacle', index, near, 'The tool comes too near the jaws.')
  if (setup.tailstockCenter && left < -TOLERANCE) {
    see(bench, 'shank-or-obstacle', index, -left, 'The tool stands past the free end, where the center is.')
  }
}
