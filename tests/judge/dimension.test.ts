import { describe, expect, it } from 'vitest'
import { hollowRadius, verdictOf } from '../../src/judge/dimension.ts'
import type { Room } from '../../src/judge/room.ts'
import type { Instrument } from '../../src/moves/operation.ts'

/** Numbers small enough to add up in the head; the slack of arithmetic is 1000. */
const MARK = { along: 10_000, deep: 20_000 }
const ROOM: Room = {
  over: { along: 30_000, deep: 40_000, near: 0, far: 0 },
  left: { along: 50_000, deep: 60_000 },
  edge: 70_000,
  runs: 0,
}
const AIM = 1_000_000
const on = (
  id: Instrument,
  sizes: readonly [number | null, number | null],
  limits: readonly [number, number] | null = null,
) => verdictOf({ id, aim: AIM, limits }, sizes, MARK, ROOM)
const both = (id: Instrument, size: number | null, limits: readonly [number, number] | null = null) =>
  on(id, [size, size], limits)

describe('a size with limits', () => {
  const limits = [AIM - 5000, AIM + 7000] as const
  it('holds up to them and a nanometer, and is over or under by what is beyond the limit', () => {
    expect(both('width', AIM + 8000, limits)).toEqual({ verdict: 'holds', by: 0, maybe: false })
    expect(both('width', AIM + 8001, limits)).toEqual({ verdict: 'gone', by: 1001, maybe: false })
    expect(both('width', AIM - 6000, limits)).toEqual({ verdict: 'holds', by: 0, maybe: false })
    expect(both('width', AIM - 6001, limits)).toEqual({ verdict: 'left', by: 1001, maybe: false })
  })
  it('of an angle is held to a billionth of a degree', () => {
    const angle = (size: number) => verdictOf({ id: 'angle', aim: 38, limits: [37, 39] }, [size, size], MARK, ROOM)
    expect([angle(39), angle(39.000001)].map(({ verdict }) => verdict)).toEqual(['holds', 'off'])
    expect([angle(37), angle(36.999999)].map(({ verdict }) => verdict)).toEqual(['holds', 'off'])
  })
  it('that the form does not have is still to cut, whatever a lower size would mean', () => {
    for (const id of ['width', 'bottomDiameter', 'near', 'radius'] as const)
      expect(both(id, null, limits)).toEqual({ verdict: 'left', by: 0, maybe: false })
  })
})

describe('what more and less mean', () => {
  // [more than the limit, less than the limit]
  it.each([
    ['width', 'gone', 'left'],
    ['depth', 'gone', 'left'],
    ['bottomDiameter', 'left', 'gone'],
    ['near', 'left', 'gone'],
    ['far', 'gone', 'left'],
    ['center', 'off', 'off'],
    ['root', 'gone', 'left'],
    ['flatness', 'left', 'left'],
    ['radius', 'off', 'off'],
    ['cornerRadius', 'left', 'gone'],
    ['legAlong', 'gone', 'left'],
    ['legDown', 'gone', 'left'],
  ] as const)('%s: more is %s, less is %s', (id, more, less) => {
    const limits = [AIM - 5000, AIM + 5000] as const
    expect(both(id, AIM + 9000, limits).verdict).toBe(more)
    expect(both(id, AIM - 9000, limits).verdict).toBe(less)
  })
})

describe('a size that some backlash changes', () => {
  const limits = [AIM - 5000, AIM + 5000] as const
  it('is told by the worse of both, and that it is only some', () => {
    expect(on('width', [AIM, AIM + 9000], limits)).toEqual({ verdict: 'gone', by: 4000, maybe: true })
    expect(on('width', [AIM - 9000, AIM], limits)).toEqual({ verdict: 'left', by: 4000, maybe: true })
    expect(on('near', [AIM, AIM + 9000], limits)).toEqual({ verdict: 'left', by: 4000, maybe: true })
    expect(on('width', [AIM - 9000, AIM + 9000], limits)).toEqual({ verdict: 'gone', by: 4000, maybe: true })
    expect(on('width', [AIM + 7000, AIM + 9000], limits)).toEqual({ verdict: 'gone', by: 4000, maybe: false })
    expect(on('width', [AIM + 9000, AIM + 7000], limits)).toEqual({ verdict: 'gone', by: 4000, maybe: false })
    expect(on('width', [null, AIM], limits)).toEqual({ verdict: 'left', by: 0, maybe: true })
    expect(on('width', [AIM, null], limits)).toEqual({ verdict: 'left', by: 0, maybe: true })
    expect(on('radius', [null, AIM + 9000], limits)).toEqual({ verdict: 'off', by: 4000, maybe: true })
    expect(on('center', [AIM - 9000, AIM - 8000], limits)).toEqual({ verdict: 'off', by: 4000, maybe: false })
  })
})

describe('a size without limits', () => {
  /** How far over and under it still holds: marks, or what the room of the others leaves. */
  it.each([
    ['near', 70_000, 70_000],
    ['far', 70_000, 70_000],
    ['center', 70_000, 70_000],
    // Along, but never under a mark on each wall.
    ['width', 30_000, 50_000],
    ['legAlong', 30_000, 50_000],
    ['depth', 40_000, 60_000],
    ['legDown', 40_000, 60_000],
    // A diameter twice; more of it is metal left.
    ['bottomDiameter', 120_000, 80_000],
    // Both ways as wide as the wider of the two.
    ['flatness', 120_000, 120_000],
    ['radius', 220_000, 220_000],
    // More of a root is metal gone; more of a fillet is metal left.
    ['root', 140_000, 220_000],
    ['cornerRadius', 220_000, 140_000],
  ] as const)('%s holds %i over and %i under', (id, over, under) => {
    const verdicts = [AIM + over + 1000, AIM + over + 1001, AIM - under - 1000, AIM - under - 1001].map(
      (size) => both(id, size).verdict === 'holds',
    )
    expect(verdicts).toEqual([true, false, true, false])
    // And is off from the aim, not from there.
    expect(both(id, AIM + over + 1001).by).toBe(over + 1001)
    expect(both(id, AIM - under - 1001).by).toBe(under + 1001)
  })
  it('a width has a mark at each wall where nothing gives it more', () => {
    const tight: Room = { ...ROOM, over: { ...ROOM.over, along: 10_000 }, left: { along: 10_000, deep: 0 } }
    const width = (size: number) =>
      verdictOf({ id: 'width', aim: AIM, limits: null }, [size, size], MARK, tight).verdict
    expect([width(AIM + 21_000), width(AIM + 21_001), width(AIM - 21_000), width(AIM - 21_001)]).toEqual([
      'holds',
      'gone',
      'holds',
      'left',
    ])
  })
  it('a width of an arc that meets the surface flatly has what its room in depth moves both edges', () => {
    const flat: Room = { ...ROOM, runs: 2 }
    const width = (size: number) => verdictOf({ id: 'width', aim: AIM, limits: null }, [size, size], MARK, flat).verdict
    // Over: 2 (10,000 + 2 x 40,000); under: 2 (10,000 + 2 x 60,000).
    expect([width(AIM + 181_000), width(AIM + 181_001), width(AIM - 261_000), width(AIM - 261_001)]).toEqual([
      'holds',
      'gone',
      'holds',
      'left',
    ])
  })
  it('the radius of a hollow is what its chord and its height may make of it', () => {
    // Chord 2,000,000 and height 100,000: a radius of 5,050,000. Chord 50,000 under and 30,000 over, height 40,000 over and 60,000 under.
    const [width, depth] = [
      { id: 'width', aim: 2_000_000, limits: null },
      { id: 'depth', aim: 100_000, limits: null },
    ] as const
    const radius = { id: 'radius', aim: 5_050_000, limits: null } as const
    const [low, high] = hollowRadius([width, depth, radius], MARK, ROOM)!
    expect(low).toBeCloseTo(1_950_000 ** 2 / (8 * 140_000) + 70_000, 3)
    expect(high).toBeCloseTo(2_030_000 ** 2 / (8 * 40_000) + 20_000, 3)
    const of = (size: number) => verdictOf(radius, [size, size], MARK, ROOM, null, [low, high]).verdict
    expect([of(low - 999), of(low - 1001), of(high + 999), of(high + 1001)]).toEqual(['holds', 'off', 'holds', 'off'])
    // No less than without them: 220,000 either way.
    const narrow = (size: number) => verdictOf(radius, [size, size], MARK, ROOM, null, [5_050_000, 5_050_000]).verdict
    expect([narrow(5_270_000), narrow(5_272_000), narrow(4_830_000), narrow(4_828_000)]).toEqual([
      'holds',
      'off',
      'holds',
      'off',
    ])
    const given = hollowRadius([width, { ...depth, limits: [90_000, 105_000] }, radius], MARK, ROOM)!
    expect(given[0]).toBeCloseTo(1_950_000 ** 2 / (8 * 105_000) + 52_500, 3)
    expect(hollowRadius([depth, radius], MARK, ROOM)).toBeNull()
    expect(hollowRadius([width, depth], MARK, ROOM)).toBeNull()
    const flat = hollowRadius([width, { ...depth, aim: 50_000 }, radius], MARK, ROOM)!
    expect(flat[1]).toBe(Number.POSITIVE_INFINITY)
  })
  it('an angle has a tenth of a degree', () => {
    const angle = (size: number) => verdictOf({ id: 'angle', aim: 38, limits: null }, [size, size], MARK, ROOM).verdict
    expect([angle(38.1), angle(38.11), angle(37.9), angle(37.89)]).toEqual(['holds', 'off', 'holds', 'off'])
  })
})
