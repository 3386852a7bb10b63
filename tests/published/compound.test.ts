import { describe, expect, it } from 'vitest'
import { alongFor, depthShift } from '../../src/sequence/compound.ts'
import { INCH } from '../../src/units/length.ts'
import rows from './compound.json' with { type: 'json' }

describe('what a swung compound does', () => {
  it('has the rows', () => {
    expect([rows.read.length, rows.recomputed.length]).toEqual([2, 14])
  })

  // 30° as a bench-lathe manual has it; the tenth-reading angle from a thread of the trade, given from the cross-feed: 84.26083°.
  it.each(rows.read)('$fromWays° from the ways: $dial on the dial is $depth in depth ($source)', (row) => {
    expect(Math.abs(depthShift(row.dial * INCH, row.fromWays) / INCH - row.depth)).toBeLessThanOrEqual(1e-9)
  })

  // Sines and cosines of the angles a shop uses, six decimals; recomputed, not read.
  it.each(rows.recomputed)('$fromWays° from the ways: 1.000 on the dial is $depth in depth, $along along', (row) => {
    expect(Math.abs(depthShift(INCH, row.fromWays) / INCH - row.depth)).toBeLessThanOrEqual(0.000001)
    expect(Math.abs(alongFor(INCH, row.fromWays) / INCH - row.along)).toBeLessThanOrEqual(0.000001)
  })

  it('moves along the work only when parallel, into it only when square, and out of it when swung the other way', () => {
    expect([alongFor(INCH, 0), depthShift(INCH, 0)]).toEqual([INCH, 0])
    expect(Math.abs(alongFor(INCH, 90))).toBeLessThan(1)
    expect(depthShift(INCH, 90)).toBe(INCH)
    expect(depthShift(INCH, -30)).toBeCloseTo(-INCH / 2, -1)
  })
})
