import { describe, expect, it } from 'vitest'
import type { Edge } from '../../src/moves/form.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { replayNext, startOf } from '../../src/replay/replay.ts'
import { back, bar, begin, bench, feed, groove, inch, out, past, round, shift, square, toInch, vee } from './shop.ts'

/** How far before its end each infeed meets metal, in order, inches. No lost motion: plain geometry. */
const rigid = {
  ...bench,
  crossFeed: { ...bench.crossFeed, backlash: 0 },
  compound: { ...bench.compound, scale: { ...bench.compound.scale, backlash: 0 } },
} as typeof bench
const met = (edge: Edge, cuts: readonly Move[]): number[] => {
  const moves = [...begin, ...cuts]
  const nose = edge.pieces.length === 3 ? ('nose-tailstock-corner' as const) : ('tailstock-corner' as const)
  const point = edge.pieces[0]!.curve.kind === 'arc' ? ('tip' as const) : nose
  const operation: Operation = { ...groove(1, 0.5, 0.3, moves), edge, placing: { point, against: { line: inch(1) } } }
  const setup = bar([1.5, 4])
  const { trace } = replayNext(rigid, setup, startOf(setup), operation, 0)
  return moves.flatMap(({ action }, i) => (action === 'feed-in' ? [toInch(trace.met[i])] : []))
}

describe('where an infeed meets the metal', () => {
  it('is the surface where nothing has been cut', () => {
    expect(met(square(0.1), [feed(100)])[0]).toBeCloseTo(0.1, 9)
    expect(met(vee(0.05, 38, 0.4), [feed(100)])[0]).toBeCloseTo(0.1, 9)
    expect(met(round(0.1), [feed(80)])[0]).toBeCloseTo(0.08, 9)
  })

  it('is where the last infeed ended', () => {
    expect(met(vee(0.05, 38, 0.4), [feed(60), out(-50), feed(100)])[1]).toBeCloseTo(0.04, 9)
  })

  it('is the surface for an edge that has only a sliver of fresh metal under it', () => {
    expect(met(square(0.1), [feed(100), out(-50), shift(1), feed(100)])[1]).toBeCloseTo(0.1, 9)
  })

  it('is the flank of the slot beside, on the flank of a V or on its nose', () => {
    // Moved aside by s, a V comes down on the flank that it has cut s / tan of half its angle sooner.
    const aside = 0.02 / Math.tan((19 * Math.PI) / 180)
    expect(met(vee(0.05, 38, 0.4), [feed(200), out(-50), shift(20), feed(200)])[1]).toBeCloseTo(aside, 9)
  })

  it('is where two circles of one size cross, for a round edge', () => {
    // Moved aside by s, at half of s from either center they are as high: each rises by what its side does there, and the edge meets the rim of the slot first.
    const [r, d, s] = [0.1, 0.05, 0.04]
    const half = Math.sqrt(r ** 2 - (r - d) ** 2)
    // The rim is at `half` from the first center, at the surface; from the second it is half − s.
    const rise = r - Math.sqrt(r ** 2 - (half - s) ** 2)
    expect(met(round(r), [feed(50), out(-50), shift(40), feed(50)])[1]).toBeCloseTo(d - rise, 9)
  })

  it('is nowhere on the way through what is cut already', () => {
    const cuts = [feed(100), out(-50), past(-20), back(0), feed(90)]
    expect(met(square(0.1), cuts)[1]).toBe(0)
  })
})
