import { describe, expect, it } from 'vitest'
import { chord, radiusFromChord, sagitta } from '../../src/features/radius/segment.ts'
import { INCH, MM } from '../../src/units/length.ts'
import rows from './segments.json' with { type: 'json' }

describe('circular segments', () => {
  it('has the rows', () => {
    expect([rows.radius.length, rows.unitCircle.length, rows.depth.length]).toEqual([2, 11, 6])
  })

  it.each(rows.radius)('chord $chord, height $height: radius $radius ($source)', (row) => {
    const radius = radiusFromChord(row.chord * INCH, row.height * INCH)
    expect(Math.abs(radius / INCH - row.radius)).toBeLessThanOrEqual(row.within)
    expect(sagitta(radius, row.chord * INCH) / INCH).toBeCloseTo(row.height, 9)
    expect(chord(radius, row.height * INCH) / INCH).toBeCloseTo(row.chord, 9)
  })

  // Handbook layout, radius 1, five decimals; recomputed, not read. A table of chords and heights by central angle.
  it.each(rows.unitCircle)('radius 1, $angle°: chord $chord, height $height', (row) => {
    const half = (row.angle * Math.PI) / 360
    expect(Math.abs(sagitta(INCH, 2 * Math.sin(half) * INCH) / INCH - row.height)).toBeLessThanOrEqual(0.00001)
    expect(Math.abs(chord(INCH, (1 - Math.cos(half)) * INCH) / INCH - row.chord)).toBeLessThanOrEqual(0.00001)
  })

  // Whole triangles (3-4-5, 5-12-13, 7-24-25) among them; recomputed, not read.
  it.each(rows.depth)('radius $radius, width $width: depth $depth', (row) => {
    const depth = sagitta(row.radius * MM, row.width * MM)
    expect(Math.abs(depth / MM - row.depth)).toBeLessThanOrEqual(0.000001)
    expect(chord(row.radius * MM, depth) / MM).toBeCloseTo(row.width, 9)
  })

  it('names the ends: no width, a half circle', () => {
    expect(sagitta(INCH, 0)).toBe(0)
    expect(sagitta(INCH, 2 * INCH)).toBe(INCH)
    expect(chord(INCH, INCH)).toBe(2 * INCH)
    expect(radiusFromChord(2 * INCH, INCH)).toBe(INCH)
  })
})
