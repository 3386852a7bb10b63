import { describe, expect, it } from 'vitest'
import type { Operation } from '../../src/moves/operation.ts'
import { measure } from '../../src/replay/measure.ts'
import { replay } from '../../src/replay/replay.ts'
import { formed, pulley, rounded, stepped, swung } from './operations.ts'
import { bar, bench, feed, groove, inch, line, move, neck, out, toInch } from './shop.ts'

const setup = bar([1.5, 4])
const run = (operation: Operation, where = setup) => {
  const trace = replay(bench, where, [operation])
  const sizes = trace.operations[0]!.sizes
  for (const size of sizes) if (size.surely !== null) expect(size.possibly).toBeCloseTo(size.surely, -2)
  return { faults: trace.faults, sizes: sizes.map(({ surely }) => toInch(surely)), raw: sizes }
}

describe('a concave groove', () => {
  it('by a form tool: the radius from chord and sagitta', () => {
    const { faults, sizes } = run(formed)
    expect(faults).toEqual([])
    const [radius, depth, width, center, root] = sizes
    expect(radius).toBeCloseTo(0.09375, 8)
    expect(depth).toBeCloseTo(0.06, 9)
    expect(width).toBeCloseTo(2 * Math.sqrt(2 * 0.09375 * 0.06 - 0.06 ** 2), 8)
    expect(center).toBeCloseTo(1.5, 9)
    expect(root).toBe(0)
  })
  it('is so wide at a diameter below the surface as the chord of its circle there', () => {
    // .020 below the surface, .040 over the deepest: 2 √(2 · .09375 · .04 − .04²), both edges on one and the same arc.
    const at = { id: 'width', aim: 0, limits: null, atDiameter: inch(1.46) } as const
    const { sizes } = run({ ...formed, dimensions: [at, { ...at, atDiameter: inch(1.5) }] })
    expect(sizes[0]).toBeCloseTo(2 * Math.sqrt(2 * 0.09375 * 0.04 - 0.04 ** 2), 8)
    expect(sizes[1]).toBeCloseTo(2 * Math.sqrt(2 * 0.09375 * 0.06 - 0.06 ** 2), 8)
  })
  it('stepped along the arc by a smaller tool', () => {
    const { faults, sizes } = run(stepped)
    expect(faults).toEqual([])
    expect(sizes[0]).toBeCloseTo(0.125, 3)
    expect(sizes[1]).toBeCloseTo(0.06, 9)
  })
  it('stepped coarsely leaves ridges, and may where the plan says so', () => {
    const kept = (place: number): boolean => place % 26 === 0
    const coarse = {
      ...stepped,
      moves: stepped.moves.filter((_, index) => index < 9 || kept(Math.floor((index - 9) / 3))),
    }
    expect(run(coarse).faults.map(({ kind }) => kind)).toEqual(['metal-left'])
    expect(run({ ...coarse, cusp: { most: inch(0.005), given: true } }).faults).toEqual([])
  })
})

describe('a groove with a wall that bulges', () => {
  it('is so wide above the surface as its wall carried on upward: the nearer of two places on the circle', () => {
    // Circle of .2 about (.9, dc) through the surface, .75, at 1.000: .01 higher it is at .9 + √(.2² − (√(.2² − .1²) + .01)²).
    const dc = Math.sqrt(0.2 ** 2 - 0.1 ** 2) - 0.75
    const curve = { kind: 'arc', zc: inch(0.9), dc: inch(dc), r: inch(0.2), side: -1 } as const
    const bottom = dc - Math.sqrt(0.2 ** 2 - 0.15 ** 2)
    const form = [
      line(0, inch(-0.75), inch(1), inch(-0.75)),
      { from: inch(1), to: inch(1.05), curve, step: 9 },
      { ...line(inch(1.05), inch(bottom), inch(1.2), inch(bottom)), step: 9 },
      line(inch(1.2), inch(-0.75), inch(4), inch(-0.75)),
    ]
    const operation = groove(1, 0.2, 0.1, [])
    const at = { id: 'width', aim: 0, limits: null, atDiameter: inch(1.52) } as const
    const near = 0.9 + Math.sqrt(0.2 ** 2 - (Math.sqrt(0.2 ** 2 - 0.1 ** 2) + 0.01) ** 2)
    expect(toInch(measure(form, setup.stock, operation, at))).toBeCloseTo(1.2 - near, 6)
  })
})

describe('a corner radius', () => {
  it('by alternating moves of both slides, each tip touched with the other slide backed off', () => {
    const { faults, sizes } = run(rounded)
    expect(faults).toEqual([])
    expect(sizes[0]).toBeCloseTo(0.125, 8)
    // Each tip touches .010 from its end, where the hollow has risen by b = R − √(R² − .010²). Down the face the form comes to where it touched, .115;
    // along the work from where the hollow meets the cylinder, u = R − √(R² − (R − b)²), less where its deep end is, e(a) = b + .115.
    const [R, back] = [0.125, 0.115]
    const b = R - Math.sqrt(R ** 2 - 0.01 ** 2)
    const at = (deep: number) => R - Math.sqrt(R ** 2 - (R - deep) ** 2)
    expect(sizes[2]).toBeCloseTo(back, 8)
    expect(sizes[1]).toBeCloseTo(at(b) - at(b + back), 8)
  })
  it('on the corner of a step', () => {
    const on: Operation = {
      ...rounded,
      placing: { point: 'tailstock-corner', against: { beside: inch(2), gap: inch(0.115) } },
      region: { from: inch(2), to: inch(2.125) },
      wanted: rounded.wanted.map((piece) => ({
        from: inch(2),
        to: inch(2.125),
        step: -1,
        curve: piece.curve.kind === 'arc' ? { ...piece.curve, zc: inch(2.125) } : piece.curve,
      })),
    }
    const { faults, sizes } = run(on, bar([1, 2], [1.5, 2]))
    expect(faults).toEqual([])
    expect(sizes[0]).toBeCloseTo(0.125, 8)
    // Each tip touches .010 from its end, where the hollow has risen by b = R − √(R² − .010²). Down the face the form comes to where it touched, .115;
    // along the work from where the hollow meets the cylinder, u = R − √(R² − (R − b)²), less where its deep end is, e(a) = b + .115.
    const [R, back] = [0.125, 0.115]
    const b = R - Math.sqrt(R ** 2 - 0.01 ** 2)
    const at = (deep: number) => R - Math.sqrt(R ** 2 - (R - deep) ** 2)
    expect(sizes[2]).toBeCloseTo(back, 8)
    expect(sizes[1]).toBeCloseTo(at(b) - at(b + back), 8)
    // The deep tip meets a lower step that is not low enough before the outer tip meets the cylinder.
    const low = run(on, bar([1.3, 2], [1.5, 2]))
    expect(low.faults.map(({ kind }) => kind)).toContain('set-up')
  })
  it('one mark short on both dials leaves a shorter leg', () => {
    const short = { ...rounded, moves: rounded.moves.filter((one) => one.count !== 0) }
    const { sizes } = run(short)
    expect(sizes[0]).toBeCloseTo(0.125, 8)
    expect(sizes[1]).toBeLessThan(0.11)
  })
})

describe('a V-groove', () => {
  const { faults, sizes, raw } = run(pulley)
  const t = Math.tan((19 * Math.PI) / 180)
  it('is cut without a fault', () => expect(faults).toEqual([]))
  it('width, depth, root, bottom', () => {
    expect(sizes[0]).toBeCloseTo(0.15 + 0.8 * t, 8)
    expect(sizes[1]).toBeCloseTo(0.4, 9)
    expect(sizes[2]).toBeCloseTo(0.15, 9)
    expect(sizes[7]).toBeCloseTo(0.7, 9)
  })
  it('included angle from the flanks', () => expect(raw[3]!.surely).toBeCloseTo(38, 6))
  it('place of both edges', () => {
    expect(sizes[4]).toBeCloseTo(1.5 - 0.4 * t, 8)
    expect(sizes[5]).toBeCloseTo(1.65 + 0.4 * t, 8)
  })
  it('width at another diameter, above the surface with the flanks carried on, or below it', () => {
    expect(sizes[8]).toBeCloseTo(0.15 + 2 * 0.401 * t, 8)
    expect(sizes[9]).toBeCloseTo(0.15 + 2 * 0.15 * t, 8)
  })
  it('a level floor', () => expect(sizes[6]).toBeCloseTo(0, 9))
})

describe('a compound swung out of parallel', () => {
  it('shifts along the work by its cosine, and in by its sine', () => {
    const { faults, sizes } = run(swung)
    expect(faults).toEqual([])
    expect(sizes[0]).toBeCloseTo(0.148 + 0.008 * Math.cos(Math.PI / 6), 9)
    expect(sizes[1]).toBeCloseTo(0.072, 9)
    expect(sizes[2]).toBeCloseTo(0, 9)
  })
  it('cuts too deep where the cross-feed is not taken back for it', () => {
    const forgot = { ...swung, moves: swung.moves.map((one) => (one.count === 68 ? feed(72) : one)) }
    const { faults, sizes } = run(forgot)
    expect(faults.map(({ kind }) => kind)).toContain('outside-form')
    expect(sizes[2]).toBeCloseTo(0.004, 9)
  })
})

describe('grooves beside a step', () => {
  it('the wall of a shoulder is the edge of the groove', () => {
    const moves = groove(1.852, 0.148, 0.05, [...neck.moves.slice(0, 8), feed(50), out(-50)])
    const { sizes } = run(
      {
        ...moves,
        dimensions: [
          { id: 'far', aim: 0, limits: null },
          { id: 'width', aim: 0, limits: null },
        ],
      },
      bar([1.5, 2], [1.54, 2]),
    )
    expect(sizes[0]).toBeCloseTo(2, 9)
    expect(sizes[1]).toBeCloseTo(0.148, 9)
  })
  it('a lower step on the tailstock side is not part of the groove', () => {
    const { faults, sizes } = run(
      { ...neck, dimensions: [...neck.dimensions, { id: 'near', aim: 0, limits: null }] },
      bar([1.45, 1.125], [1.5, 2.875]),
    )
    expect(faults).toEqual([])
    expect(sizes[0]).toBeCloseTo(0.156, 9)
    expect(sizes[2]).toBeCloseTo(1.125, 9)
  })
  it('nothing cut, nothing to measure', () => {
    expect(measure(setup.stock, setup.stock, neck, neck.dimensions[0]!)).toBeNull()
  })
  it('a corner has legs, a groove has none', () => {
    const form = [
      line(0, inch(-0.75), inch(1.2), inch(-0.75)),
      line(inch(1.2), inch(-0.7), inch(1.25), inch(-0.7)),
      line(inch(1.25), inch(-0.75), inch(4), inch(-0.75)),
    ]
    expect(measure(form, setup.stock, neck, { id: 'legDown', aim: 0, limits: null })).toBeNull()
    expect(toInch(measure(form, setup.stock, neck, { id: 'width', aim: 0, limits: null }))).toBeCloseTo(0.05, 9)
  })
})

describe('feeding across by the carriage', () => {
  const moves = [
    move('take-up', 'compound', null, 11),
    move('take-up', 'carriage', null, 4),
    move('align'),
    move('lock'),
    move('zero', 'carriage'),
    move('zero', 'compound'),
    move('touch-off', 'cross-feed'),
    move('zero', 'cross-feed'),
    out(-50),
    move('start'),
    feed(72),
    move('unlock'),
    move('feed-across', 'carriage', 2),
    move('lock'),
    out(-50),
  ]
  it('cuts as far as its dial says', () => {
    const { faults, sizes } = run(groove(1.125, 0.168, 0.072, moves))
    expect(faults).toEqual([])
    expect(sizes[0]).toBeCloseTo(0.168, 9)
  })
  it('needs its own backlash taken up', () => {
    const { faults } = run(groove(1.125, 0.168, 0.072, moves.toSpliced(1, 1)))
    expect(faults.map(({ kind }) => kind)).toContain('open-zero')
  })
})
