import { describe, expect, it } from 'vitest'
import type { Bench } from '../../src/features/draft.ts'
import { reachFor, roughDepthsTo, touchedShoulder } from '../../src/features/plunge.ts'
import { inch, toInch } from '../replay/shop.ts'

/** Three steps from the free end: .750 to 1.000, 1.500 to 2.000, 1.250 to 4.000. */
const bench = {
  units: 'inch',
  steps: [
    [0, 1, 0.75],
    [1, 2, 1.5],
    [2, 4, 1.25],
  ].map(([start, end, measured]) => ({ start: inch(start!), end: inch(end!), measured: inch(measured!) })),
} as unknown as Bench

describe('the reach of a tool that is still to be ground', () => {
  const reach = (near: number, far: number) => toInch(reachFor(bench, inch(near), inch(far), inch(0.1)))
  it('is the depth and 1/16 in the open', () => {
    expect(reach(3, 3.1)).toBeCloseTo(0.1625, 9)
  })
  it('is as much more as a shoulder within half an inch is high', () => {
    // 8 × 1/16: the .375 of the shoulder at 1.000 counts for a groove that ends beyond .500.
    expect(reach(0.4, 0.49)).toBeCloseTo(0.1625, 9)
    expect(reach(0.4, 0.51)).toBeCloseTo(0.1625 + 0.375, 9)
    // Toward the headstock of the 1.500 step: .125 high, up to 2.500.
    expect(reach(2.51, 2.6)).toBeCloseTo(0.1625, 9)
    expect(reach(2.49, 2.6)).toBeCloseTo(0.1625 + 0.125, 9)
  })
  it('is no less beside a lower step', () => {
    expect(reach(1.1, 1.2)).toBeCloseTo(0.1625, 9)
  })
})

describe('the shoulder that a form stands against', () => {
  const at = (near: number, far: number) => touchedShoulder(bench, inch(near), inch(far))
  it('is the face of a larger step on that side, and of no smaller one', () => {
    expect(at(0.9, 1)).toBe('headstock')
    expect(at(2, 2.1)).toBe('tailstock')
    expect([at(1, 1.1), at(1.9, 2), at(0, 0.1), at(3.9, 4)]).toEqual([null, null, null, null])
    expect([at(0.9, 0.999), at(2.001, 2.1), at(0.9, 1.1)]).toEqual([null, null, null])
  })
})

describe('the depths of roughing infeeds', () => {
  it('go by the infeed, the rest last, and share alike where a rest of under a quarter would only rub', () => {
    expect(roughDepthsTo(0, 10)).toEqual([])
    expect(roughDepthsTo(-1, 10)).toEqual([])
    expect(roughDepthsTo(30, null)).toEqual([30])
    expect(roughDepthsTo(30, 30)).toEqual([30])
    expect(roughDepthsTo(30, 40)).toEqual([30])
    expect(roughDepthsTo(30, 10)).toEqual([10, 20, 30])
    expect(roughDepthsTo(100, 40)).toEqual([40, 80, 100])
    expect(roughDepthsTo(90, 40)).toEqual([40, 80, 90])
    expect(roughDepthsTo(88, 40)).toEqual([29, 59, 88])
  })
})
