import { describe, expect, it } from 'vitest'
import type { EdgeCurve } from './edges.ts'
import { edgeCurve } from './edges.ts'
import { squareSheet } from './hand-sheets.ts'
import type { Edge } from './sheet-shape.ts'
import type { Place } from './work-grid.ts'
import { cutAt, gridOf, joinTouch, sweepSlanting, untouched } from './work-grid.ts'

const none = { width: null, nose: null, angle: null, radius: null, reach: 0.2 }
const edges: Record<string, Edge> = {
  square: { ...none, shape: 'square', width: 0.08 },
  'square with round corners': { ...none, shape: 'square', width: 0.08, radius: 0.03 },
  vee: { ...none, shape: 'vee', nose: 0.01, angle: 60 },
  round: { ...none, shape: 'round', radius: 0.06 },
  'vee on a sloping face': {
    ...none,
    shape: 'vee',
    nose: 0.01,
    rakeInUse: 14.5,
    face: { angle: 58, radius: null, floor: 0.5 },
  },
  'round on a sloping face': {
    ...none,
    shape: 'round',
    rakeInUse: 14.5,
    face: { angle: null, radius: 0.06, floor: 0.5 },
  },
}
// From above the stock into it and out of it again, both ways along: the stock has a radius of 0.625.
const ways: readonly (readonly [Place, Place])[] = [
  [
    { z: 0.9, tip: 0.65 },
    { z: 0.95, tip: 0.57 },
  ],
  [
    { z: 0.97, tip: 0.575 },
    { z: 0.8, tip: 0.56 },
  ],
  [
    { z: 0.83, tip: 0.55 },
    { z: 0.9, tip: 0.64 },
  ],
]
const PIECES = 700

/** The same way by standing still at every place on it. */
function stepped(grid: ReturnType<typeof gridOf>, edge: EdgeCurve, from: Place, to: Place) {
  let touch = untouched()
  for (let k = 0; k <= PIECES; k++) {
    const part = k / PIECES
    touch = joinTouch(touch, cutAt(grid, edge, from.z + (to.z - from.z) * part, from.tip + (to.tip - from.tip) * part))
  }
  return touch
}

describe('a slanting move of the brute-force replay', () => {
  it.each(Object.keys(edges))('leaves the same work as the edge set in at every place on the way: %s', (name) => {
    const edge = edgeCurve(edges[name]!)
    const [fast, slow] = [gridOf(squareSheet()), gridOf(squareSheet())]
    for (const [from, to] of ways) {
      const [a, b] = [sweepSlanting(fast, edge, from, to, PIECES), stepped(slow, edge, from, to)]
      expect([a.first, a.last]).toEqual([b.first, b.last])
      expect(a.buried).toBeCloseTo(b.buried, 9)
      expect(fast.now.every((radius, i) => Math.abs(radius - slow.now[i]!) <= 2e-9)).toBe(true)
    }
    expect(Math.min(...fast.now)).toBeCloseTo(0.55, 5)
  })
})
