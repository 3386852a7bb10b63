import { describe, expect, it } from 'vitest'
import type { PlungeCuts } from '../../src/moves/cuts.ts'
import { mostSteps, passesTo, stopsWithin } from '../../src/sequence/stops.ts'
import { bench, inch } from '../replay/shop.ts'

const within = (wanted: readonly number[], most: number | null, contact = 0, finish: number | null = null) =>
  stopsWithin(wanted, { contact, most, finish })

describe('readings to stop at', () => {
  it('are those that are wanted where no infeed is set, or where none is larger', () => {
    expect(within([20, 40, 54], null)).toEqual([20, 40, 54])
    expect(within([], 10)).toEqual([])
    expect(within([10, 20, 30], 10)).toEqual([10, 20, 30])
    expect(within([8, 17, 25], 10)).toEqual([8, 17, 25])
  })
  it('stop short where rounding has made a pass larger, and one more makes good what that lost', () => {
    // 11 is more than 10 1/2, and so on: 10, 20, 30, and 2 are left, which would only rub: 26 and 32.
    expect(within([11, 21, 32], 10.5)).toEqual([10, 20, 26, 32])
    expect(within([11, 21, 34], 10.5)).toEqual([10, 20, 30, 34])
    expect(within([11], 10)).toEqual([6, 11])
  })
  it('count from where the edge meets the metal', () => {
    expect(within([10, 20], 10, 3)).toEqual([10, 20])
    // From 3 to 13, then 23, and 1 is left: 13, 19, 24.
    expect(within([14, 24], 10, 3)).toEqual([13, 19, 24])
    // In the clear nothing is cut: it is gone to at once.
    expect(within([2, 10], 10, 5)).toEqual([2, 10])
  })
  it('never go by less than a mark', () => {
    expect(within([3], 0.4)).toEqual([1, 2, 3])
    expect(within([2], 0.4, 0.5)).toEqual([1, 2])
  })
  it('share alike where the last pass would only rub', () => {
    // 10, 20 and then 1: the last two make 10 and 11 of 21, so 10, 16, 21.
    expect(within([21], 10)).toEqual([10, 16, 21])
    expect(within([23], 10)).toEqual([10, 20, 23])
    expect(within([22], 10)).toEqual([10, 16, 22])
    // A quarter of an infeed is a pass.
    expect(within([18], 8)).toEqual([8, 16, 18])
    expect(within([17], 8)).toEqual([8, 13, 17])
  })
  it('go deeper than was meant where the finish would take more than an infeed', () => {
    expect(within([20], 10, 0, 30)).toEqual([10, 20])
    // One and a half marks at most: to 9, so that the finish to 10 is no more.
    expect(within([5], 1.5, 0, 10).at(-1)).toBe(9)
    expect(within([5], 0.5, 0, 10).at(-1)).toBe(9)
    // 21, so that 10 are left; 1 after 20 would only rub.
    expect(within([20], 10, 0, 31)).toEqual([10, 16, 21])
    expect(within([20], 10, 0, null).at(-1)).toBe(20)
  })
})

describe('the passes of plunges', () => {
  const cuts = (more: Partial<PlungeCuts>): PlungeCuts =>
    ({
      infeed: inch(0.02),
      peck: null,
      depth: inch(0.072),
      roughDepths: [inch(0.02), inch(0.04), inch(0.054)],
      ...more,
    }) as PlungeCuts
  it('are no larger than the infeed, counted on the dial', () => {
    expect(mostSteps(inch(0.02), inch(0.001))).toBe(20)
    expect(mostSteps(inch(0.0205), inch(0.001))).toBeCloseTo(20.5, 9)
    expect(mostSteps(null, inch(0.001))).toBe(null)
  })
  it('hold the finish to an infeed where so much was meant to be left at the most', () => {
    expect(passesTo(cuts({}), bench.crossFeed, 72)).toEqual({ contact: 0, most: 20, finish: 72 })
    expect(passesTo(cuts({ roughDepths: [inch(0.05)] }), bench.crossFeed, 72).finish).toBe(null)
    expect(passesTo(cuts({ roughDepths: [inch(0.052)] }), bench.crossFeed, 72).finish).toBe(72)
    expect(passesTo(cuts({ infeed: null }), bench.crossFeed, 72, 4)).toEqual({ contact: 4, most: null, finish: null })
    expect(passesTo(cuts({ roughDepths: [] }), bench.crossFeed, 72).finish).toBe(null)
  })
})
