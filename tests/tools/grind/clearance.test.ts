import { describe, expect, it } from 'vitest'
import { backToGrind, flankPlane, flankRelief, sideInUse } from '../../../src/tools/grind/clearance.ts'
import { bisect, cross, dot, turned, type Vector } from './vectors.ts'

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180)
const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI

/** Two directions that lie in the ground side, turned with the bit; where the side stands at a place straight back and down. */
const alongAt = (relief: number, back: number, tilt: number, place: { back: number; up: number }): number => {
  const first = turned([-tan(back), 1, 0], -tilt)
  const second = turned([-tan(relief), 0, -1], -tilt)
  const normal = cross(first, second)
  const at = (along: number): number => dot(normal, [along, place.back, place.up] as Vector) * Math.sign(normal[0])
  return bisect(at, -100, 100)
}

const PLANES = [
  [5, 3],
  [4, 2],
  [6, 2],
  [10, -17],
  [0, 4],
] as const
const STANDS = [
  [0, 0],
  [14.5, 0],
  [14.5, -14.5],
  [16.5, -10],
  [0, 8],
] as const
const CASES = PLANES.flatMap(([relief, back]) =>
  STANDS.map(([tilt, rakeGround]) => ({ relief, back, tilt, rakeGround })),
)

describe('the side of a bit as it stands', () => {
  it.each(CASES)('relief $relief°, back $back°, tilt $tilt°, rake ground $rakeGround°: as the planes say', (row) => {
    const { relief, back, tilt, rakeGround } = row
    const used = sideInUse({ relief, back }, { tilt, rakeGround })
    const edge = alongAt(relief, back, tilt, { back: 1, up: -tan(rakeGround + tilt) })
    expect(used.edge).toBeCloseTo(degrees(-edge), 6)
    expect(used.relief).toBeCloseTo(degrees(-alongAt(relief, back, tilt, { back: 0, up: -1 })), 6)
  })

  it('is what was ground in a level block', () => {
    const used = sideInUse({ relief: 5, back: 3 }, { tilt: 0, rakeGround: 0 })
    expect([used.edge, used.relief]).toEqual([expect.closeTo(3, 9), expect.closeTo(5, 9)])
  })

  it('loses clearance where a tilted bit has its top leveled: 2° behind 5° of relief leave under 1° in 14 1/2°', () => {
    const used = sideInUse({ relief: 5, back: 2 }, { tilt: 14.5, rakeGround: -14.5 })
    expect(used.edge).toBeGreaterThan(0)
    expect(used.edge).toBeLessThan(1)
  })

  it('loses none where the top is left as it is', () => {
    expect(sideInUse({ relief: 5, back: 2 }, { tilt: 14.5, rakeGround: 0 }).edge).toBeGreaterThanOrEqual(2)
  })

  it.each(STANDS)('tilt %f°, rake ground %f°: what it says to grind leaves 1°', (tilt, rakeGround) => {
    const stand = { tilt, rakeGround }
    const back = backToGrind(1, 6, stand)
    expect(sideInUse({ relief: 6, back }, stand).edge).toBeCloseTo(1, 9)
  })

  it.each(STANDS)(
    'tilt %f°, rake ground %f°: the relief it says to grind under a flank leaves 4°',
    (tilt, rakeGround) => {
      const stand = { tilt, rakeGround }
      const relief = flankRelief(4, 17, stand)
      const plane = flankPlane(17, relief, rakeGround)
      expect(sideInUse(plane, stand).relief).toBeCloseTo(4, 9)
      expect(degrees(-alongAt(relief, plane.back, tilt, { back: 0, up: -1 }))).toBeCloseTo(4, 6)
    },
  )

  it.each(STANDS)('tilt %f°, rake ground %f°: the plane of a flank holds its edge on the face', (tilt, rakeGround) => {
    const plane = flankPlane(17, 8, rakeGround)
    const used = sideInUse(plane, { tilt, rakeGround })
    // The edge widens by tan 17° for each unit along the face, which is cos(rake) straight back.
    expect(-tan(used.edge) * Math.cos(((rakeGround + tilt) * Math.PI) / 180)).toBeCloseTo(tan(17), 9)
  })
})
