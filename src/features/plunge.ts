import { bounded } from '../moves/bounds.ts'
import type { Length } from '../units/length.ts'
import type { Bench } from './draft.ts'
import { pastTheDepth } from './shop.ts'

/** Depths of the roughing infeeds: each as deep as `infeed` allows, the remainder last. pm, ascending. */
export function roughDepthsTo(depth: Length, infeed: Length | null): Length[] {
  if (depth <= 0) return []
  if (infeed === null || infeed >= depth) return [depth]
  const full = bounded(Math.ceil(depth / infeed - 1e-9) - 1)
  // A very thin last pass would only rub: then all passes are made equal.
  if (depth - full * infeed < infeed / 4)
    return Array.from({ length: full + 1 }, (_, i) => Math.round((depth * (i + 1)) / (full + 1)))
  return [...Array.from({ length: full }, (_, i) => infeed * (i + 1)), depth]
}

/** The shoulder beside a form, if one of its edges is on the face of a larger step. */
export function touchedShoulder(bench: Bench, near: Length, far: Length): 'headstock' | 'tailstock' | null {
  const at = bench.steps.findIndex((step) => near >= step.start && far <= step.end)
  const here = bench.steps[at]
  if (here === undefined) return null
  const next = bench.steps[at + 1]
  if (next !== undefined && far === here.end && next.measured > here.measured) return 'headstock'
  const before = bench.steps[at - 1]
  return before !== undefined && near === here.start && before.measured > here.measured ? 'tailstock' : null
}

/** Reach of a tool that must still be ground: the depth, the height of any nearby shoulder, and a little more. pm. */
export function reachFor(bench: Bench, near: Length, far: Length, depth: Length): Length {
  const margin = 8 * pastTheDepth(bench.units)
  const under = bench.steps.filter((step) => step.end > near - margin && step.start < far + margin)
  const here = bench.steps.find((step) => near >= step.start && far <= step.end)!
  const height = Math.max(0, ...under.map((step) => (step.measured - here.measured) / 2))
  return depth + height + pastTheDepth(bench.units)
}
