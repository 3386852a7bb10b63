import { describe, expect, it } from 'vitest'
import {
  depthAt,
  depthReached,
  faceLength,
  flankStrays,
  halfAngleCut,
  halfAngleToGrind,
  radiusToGrind,
  roundCut,
  roundStrays,
  squareToFront,
} from '../../../src/tools/grind/form.ts'
import { INCH } from '../../../src/units/length.ts'
import { bisect, distanceToAxis } from './vectors.ts'

const RAKES = [-10, 0, 2, 8, 14.5, 16.5, 35]
const FORMS = [
  [1 / 16, 0.5],
  [3 / 16, 1.5],
  [0.4, 3],
  [0.1, 12],
] as const
const CASES = FORMS.flatMap(([depth, diameter]) => RAKES.map((rake) => ({ depth, diameter, rake })))

describe('the length on a raked face', () => {
  it.each(CASES)('$depth deep on $diameter with $rake°: as found by halving along the face', (row) => {
    const { depth, diameter, rake } = row
    const floor = diameter / 2 - depth
    const found = bisect((face) => distanceToAxis(floor, face, rake) - diameter / 2, 0, 2 * diameter)
    expect(faceLength(depth * INCH, floor * INCH, rake) / INCH).toBeCloseTo(found, 9)
    expect(depthAt(found * INCH, floor * INCH, rake) / INCH).toBeCloseTo(depth, 9)
  })

  it.each(CASES)(
    '$depth deep on $diameter with $rake°: as deep as it is when the far point meets the surface',
    (row) => {
      const { depth, diameter, rake } = row
      const found = bisect((floor) => distanceToAxis(floor, depth, rake) - diameter / 2, 0, diameter / 2)
      expect(depthReached(depth * INCH, (diameter / 2) * INCH, rake) / INCH).toBeCloseTo(diameter / 2 - found, 9)
    },
  )

  it.each(FORMS)('%f deep on %f: nothing to correct without rake', (depth, diameter) => {
    expect(faceLength(depth * INCH, (diameter / 2 - depth) * INCH, 0)).toBeCloseTo(depth * INCH, -1)
    expect(depthReached(depth * INCH, (diameter / 2) * INCH, 0)).toBeCloseTo(depth * INCH, -1)
  })

  it.each(RAKES)('%f°: the cosine of the rake on very large work', (rake) => {
    const cosine = Math.cos((rake * Math.PI) / 180)
    expect(0.125 / (faceLength(0.125 * INCH, 1e6 * INCH, rake) / INCH)).toBeCloseTo(cosine, 5)
    expect(depthReached(0.125 * INCH, 1e6 * INCH, rake) / (0.125 * INCH)).toBeCloseTo(cosine, 5)
  })

  it.each([5, 8, 10, 14, 20])('%f° of clearance: its cosine, square to the front', (clearance) => {
    expect(squareToFront(INCH, clearance, 0) / INCH).toBeCloseTo(Math.cos((clearance * Math.PI) / 180), 12)
  })
})

describe('a straight flank', () => {
  it('comes out straight without rake', () => expect(flankStrays(0.1, 0.1, 0.5, 0)).toBeLessThan(1e-12))
  it('is furthest from straight near its middle with rake', () => {
    const face = faceLength(0.1875, 0.5625, 16.5)
    const middle = Math.abs(distanceToAxis(0.5625, face / 2, 16.5) - 0.5625 - 0.1875 / 2)
    expect(flankStrays(0.1875, face, 0.5625, 16.5)).toBeGreaterThanOrEqual(middle)
    expect(flankStrays(0.1875, face, 0.5625, 16.5)).toBeLessThan(1.1 * middle)
  })
})

// Common practice, no source: 34° in a 14 1/2° holder, 3/16 deep on 1 1/2.
describe('a V of 34°, 3/16 deep on 1 1/2', () => {
  const depth = (3 / 16) * INCH
  const surface = 0.75 * INCH
  const cut = (rake: number): number => 2 * halfAngleCut(17, depth, faceLength(depth, surface - depth, rake))

  it('cuts 34.8° where the holder tilts a level top by 14 1/2°', () => expect(cut(14.5)).toBeCloseTo(34.8, 1))
  it('cuts 35.0° with 2° more, and is .006 shallow where its width is right', () => {
    expect(cut(16.5)).toBeCloseTo(35.0, 1)
    expect((depth - depthReached(depth, surface, 16.5)) / INCH).toBeCloseTo(0.006, 3)
  })
  it.each([-8, 0, 2, 14.5, 16.5])('with %f° comes out at 34° when ground as told', (rake) => {
    const face = faceLength(depth, surface - depth, rake)
    const ground = halfAngleToGrind(17, depth, face)
    expect(halfAngleCut(ground, depth, face)).toBeCloseTo(17, 9)
    // From vectors: half the width of the flank where the surface meets the face.
    const halfWidth = Math.tan((ground * Math.PI) / 180) * bisect((l) => distanceToAxis(0.5625, l, rake) - 0.75, 0, 1)
    expect(halfWidth).toBeCloseTo(Math.tan((17 * Math.PI) / 180) * 0.1875, 9)
    expect(ground <= 17 + 1e-9).toBe(true)
  })
})

describe('a round edge', () => {
  it('needs no correction without rake', () => {
    expect(radiusToGrind(0.25 * INCH, 0.1 * INCH, 0.1 * INCH) / INCH).toBeCloseTo(0.25, 9)
    expect(roundCut(0.25 * INCH, 0.1 * INCH, 0.1 * INCH).radius / INCH).toBeCloseTo(0.25, 9)
  })

  it.each([2, 14.5, 16.5])('ground as told, with %f°, cuts the edges and the bottom of the form', (rake) => {
    const [radius, depth, surface] = [0.25, 0.1, 0.75]
    const face = bisect((l) => distanceToAxis(surface - depth, l, rake) - surface, 0, 1)
    const ground = radiusToGrind(radius * INCH, depth * INCH, face * INCH) / INCH
    const cut = roundCut(ground * INCH, depth * INCH, face * INCH)
    expect(cut.radius / INCH).toBeCloseTo(radius, 9)
    expect(cut.width / INCH).toBeCloseTo(2 * Math.sqrt(radius ** 2 - (radius - depth) ** 2), 9)
    const uncorrected = roundCut(radius * INCH, depth * INCH, face * INCH)
    expect(uncorrected.width).toBeGreaterThan(cut.width)
    expect(ground).toBeLessThan(radius)
  })

  it.each([0, 14.5])('with %f° strays from its circle by no more than it says', (rake) => {
    const [radius, depth, floor] = [0.25, 0.1, 0.65]
    const face = faceLength(depth, floor, rake)
    const ground = radiusToGrind(radius, depth, face)
    const told = roundStrays({ radius, ground, depth, floor, rake })
    const half = Math.sqrt(radius ** 2 - (radius - depth) ** 2)
    const off = Array.from({ length: 1001 }, (_, i) => {
      const x = (half * i) / 1000
      const along = ground - Math.sqrt(ground ** 2 - x ** 2)
      return Math.abs(distanceToAxis(floor, along, rake) - floor - (radius - Math.sqrt(radius ** 2 - x ** 2)))
    })
    expect(told).toBeCloseTo(Math.max(...off), 6)
    expect(rake === 0 ? told < 1e-9 : told > 1e-5 && told < 0.001).toBe(true)
  })

  it('never cuts wider than its whole circle', () => {
    expect(roundCut(INCH, INCH, 1.05 * INCH).width / INCH).toBeCloseTo(2, 9)
  })
})
