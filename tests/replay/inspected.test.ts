import { describe, expect, it } from 'vitest'
import type { Form, Piece } from '../../src/moves/form.ts'
import type { Instrument, Operation, WantedDimension } from '../../src/moves/operation.ts'
import { cavityOf, deepestOf } from '../../src/replay/cavity.ts'
import { cutInto } from '../../src/replay/form/insert.ts'
import { swept } from '../../src/replay/form/sweep.ts'
import { measure } from '../../src/replay/measure.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { bar, groove, inch, line, toInch, vee } from './shop.ts'

/** Forms put down by hand in a bar of 1.5 in, and what an inspector finds of them; nothing is replayed. */
const { stock } = bar([1.5, 4])
/** Straight pieces: from z and depth to z and depth, each a cut of its own. */
type Part = readonly [z0: number, deep0: number, z1: number, deep1: number]
const piece = ([z0, deep0, z1, deep1]: Part, step: number): Piece => ({
  ...line(inch(z0), inch(deep0 - 0.75), inch(z1), inch(deep1 - 0.75)),
  step,
})
const around = (pieces: readonly Piece[]): Form => [
  ...(pieces[0]!.from === 0 ? [] : [line(0, inch(-0.75), pieces[0]!.from, inch(-0.75))]),
  ...pieces,
  line(pieces.at(-1)!.to, inch(-0.75), inch(4), inch(-0.75)),
]
const cut = (...parts: readonly Part[]): Form => around(parts.map(piece))
const level = (from: number, to: number, deep: number): Part => [from, deep, to, deep]
const over = (from: number, to: number, more: Partial<Operation> = {}): Operation => ({
  ...groove(from, to - from, 0.1, []),
  ...more,
})
const take = (id: Instrument, form: Form, operation: Operation, more: Partial<WantedDimension> = {}) =>
  measure(form, stock, operation, { id, aim: 0, limits: null, ...more })
const inches = (...of: Parameters<typeof take>): number | null => {
  const size = take(...of)
  return size === null ? null : toInch(size)
}
const about = (value: number) => expect.closeTo(value, 8)
const mirrored = (form: Form): Form =>
  form.toReversed().map(({ from, to, curve, step }) => {
    const end = inch(4)
    const there =
      curve.kind === 'arc'
        ? { ...curve, zc: end - curve.zc }
        : { ...curve, z0: end - curve.z1, d0: curve.d1, z1: end - curve.z0, d1: curve.d0 }
    return { from: end - to, to: end - from, curve: there, step }
  })
/** The same groove seen from the other end: what is measured does not depend on which side is which. */
const both = (id: Instrument, form: Form, operation: Operation, more: Partial<WantedDimension> = {}) => {
  const { region } = operation
  const back = { ...operation, region: { from: inch(4) - region.to, to: inch(4) - region.from } }
  return [inches(id, form, operation, more), inches(id, mirrored(form), back, more)]
}

describe('where a groove begins and ends', () => {
  const ends = (form: Form, operation: Operation, start = stock) => {
    const { near, far, deepest } = cavityOf(form, start, operation)!
    return [toInch(near), toInch(far), toInch(deepest) + 0.75]
  }
  const long = cut(level(1, 1.04, 0.02), level(1.04, 1.07, 0.05), level(1.07, 1.13, 0.1), level(1.13, 1.17, 0.05))
  it('is where its cuts do, however far they go beyond their region', () => {
    expect(ends(long, over(1.08, 1.12))).toEqual([about(1), about(1.17), about(0.1)])
    expect(ends(mirrored(long), over(2.88, 2.92))).toEqual([about(2.83), about(3), about(0.1)])
  })
  it('of a corner is at its face: what is gone from the lower step before it is no part of it', () => {
    const lower = bar([1, 1], [1.5, 3]).stock
    const gouged = [
      line(0, inch(-0.5), inch(0.95), inch(-0.5)),
      { ...line(inch(0.95), inch(-0.45), inch(1), inch(-0.44)), step: 0 },
      { ...line(inch(1), inch(-0.65), inch(1.125), inch(-0.65)), step: 1 },
      line(inch(1.125), inch(-0.75), inch(4), inch(-0.75)),
    ]
    const wanted = [line(inch(1), inch(-0.65), inch(1.125), inch(-0.65))]
    expect(ends(gouged, over(1, 1.125, { wanted }), lower)).toEqual([about(1), about(1.125), about(0.1)])
  })
  it('is not where another groove beside it does', () => {
    const apart = around([
      piece(level(1, 1.04, 0.1), 0),
      piece(level(1.04, 1.06, 0), -1),
      piece(level(1.06, 1.1, 0.09), 2),
    ])
    expect(ends(apart, over(1.07, 1.12))).toEqual([about(1.06), about(1.1), about(0.09)])
    expect(ends(apart, over(0.99, 1.03))).toEqual([about(1), about(1.04), about(0.1)])
    // The deeper of two within one region.
    expect(ends(apart, over(0.99, 1.12))).toEqual([about(1), about(1.04), about(0.1)])
    expect(ends(mirrored(apart), over(2.88, 3.01))).toEqual([about(2.96), about(3), about(0.1)])
  })
  it('of two that are equally deep is that of the first', () => {
    const equal = around([
      piece(level(1, 1.04, 0.1), 0),
      piece(level(1.04, 1.06, 0), -1),
      piece(level(1.06, 1.1, 0.1), 2),
    ])
    expect(ends(equal, over(0.99, 1.12))).toEqual([about(1), about(1.04), about(0.1)])
    expect(toInch(deepestOf([piece(level(1, 1.1, 0.1), 0), piece(level(1.1, 1.2, 0.1), 1)]).z)).toBeCloseTo(1, 8)
  })
  it('is not where a slope beside it goes below the surface before its region begins', () => {
    const step = [line(0, inch(-0.85), inch(1), inch(-0.85)), line(inch(1), inch(-0.75), inch(4), inch(-0.75))]
    const form = [
      line(0, inch(-0.85), inch(0.9), inch(-0.85)),
      piece([0.9, 0.2, 1, -0.05], 0),
      line(inch(1), inch(-0.75), inch(1.02), inch(-0.75)),
      piece(level(1.02, 1.05, 0.1), 1),
      line(inch(1.05), inch(-0.75), inch(4), inch(-0.75)),
    ]
    expect(ends(form, over(0.99, 1.1), step)).toEqual([about(1.02), about(1.05), about(0.1)])
    expect(ends(form, over(0.91, 1.1), step)).toEqual([about(0.9), about(0.98), about(0.2)])
  })
  it('may be the free end', () => {
    const out = cut(level(0, 0.05, 0.06), level(0.05, 0.2, 0.1))
    expect(ends(out, over(0.1, 0.2))).toEqual([0, about(0.2), about(0.1)])
  })
  it('is not in a higher step beside it that was grazed above the surface', () => {
    const step = [line(0, inch(-0.75), inch(1.2), inch(-0.75)), line(inch(1.2), inch(-0.77), inch(4), inch(-0.77))]
    const form = [
      line(0, inch(-0.75), inch(1), inch(-0.75)),
      piece(level(1, 1.2, 0.1), 0),
      piece(level(1.2, 1.22, -0.01), 1),
      line(inch(1.22), inch(-0.77), inch(4), inch(-0.77)),
    ]
    expect(ends(form, over(1, 1.2), step)).toEqual([about(1), about(1.2), about(0.1)])
  })
  it('of a corner is its face: what was dug into the lower step before it is not part of it', () => {
    const step = [line(0, inch(-0.6), inch(1), inch(-0.6)), line(inch(1), inch(-0.75), inch(4), inch(-0.75))]
    const corner = over(1, 1.1)
    for (const dug of [level(0.9, 1, 0.2), [0.9, 0.2, 1, 0.21] as const]) {
      const form = [
        line(0, inch(-0.6), inch(0.9), inch(-0.6)),
        piece(dug, 0),
        piece(level(1, 1.05, 0.1), 1),
        piece(level(1.05, 1.1, 0.04), 2),
        line(inch(1.1), inch(-0.75), inch(4), inch(-0.75)),
      ]
      expect(ends(form, corner, step)).toEqual([1, about(1.1), about(0.1)])
      expect(measure(form, step, corner, { id: 'legDown', aim: 0, limits: null })! / inch(1)).toBeCloseTo(0.1, 8)
    }
  })
  it('of a corner is its face too where the step before it is just as low; in a taper there is none', () => {
    const legs = (before: Piece) => {
      const start = [before, line(inch(1), inch(-0.75), inch(4), inch(-0.75))]
      const form = [
        { ...before, to: inch(1) },
        piece(level(1, 1.1, 0.1), 1),
        line(inch(1.1), inch(-0.75), inch(4), inch(-0.75)),
      ]
      return measure(form, start, over(1, 1.1), { id: 'legAlong', aim: 0, limits: null })
    }
    expect(toInch(legs(line(0, inch(-0.65), inch(1), inch(-0.65))))).toBeCloseTo(0.1, 8)
    expect(legs(line(0, inch(-0.66), inch(1), inch(-0.66)))).toBe(null)
    // A cone that is as low as that only further on.
    const cone = line(0, inch(-1), inch(2), inch(-0.5))
    const start = [cone, line(inch(2), inch(-0.5), inch(4), inch(-0.5))]
    const form = [{ ...cone, to: inch(1) }, piece(level(1, 1.1, 0.1), 1), { ...cone, from: inch(1.1) }, start[1]!]
    expect(measure(form, start, over(1, 1.1), { id: 'legAlong', aim: 0, limits: null })).toBe(null)
    expect(measure(form, start, over(1, 1.1), { id: 'depth', aim: 0, limits: null })! / inch(1)).toBeCloseTo(0.1, 8)
  })
})

describe('a width', () => {
  const vee = cut([1, 0, 1.1, 0.1], level(1.1, 1.2, 0.1), [1.2, 0.1, 1.3, 0])
  it('between flanks: on them, and above the surface on them carried on', () => {
    for (const [at, width] of [
      [1.5, 0.3],
      [1.4, 0.2],
      [1.54, 0.34],
    ] as const)
      expect(both('width', vee, over(1, 1.3), { atDiameter: inch(at) })).toEqual([about(width), about(width)])
  })
  it('is none below the bottom', () => {
    expect(both('width', vee, over(1, 1.3), { atDiameter: inch(1.28) })).toEqual([null, null])
  })
  it('between walls is the same at every height, above the surface too', () => {
    const square = cut(level(1, 1.1, 0.1), [1.1, 0.1, 1.2, 0.095])
    for (const at of [1.5, 1.4, 1.54])
      expect(both('width', square, over(1, 1.2), { atDiameter: inch(at) })).toEqual([about(0.2), about(0.2)])
  })
  it('ends at a wall behind what rises less than 1 in 10, and goes on up what rises more', () => {
    const rising = (by: number) => cut([1, 0.1 - by, 1.1, 0.1], level(1.1, 1.2, 0.1))
    const at = { atDiameter: inch(1.54) }
    expect(both('width', rising(0.009), over(1, 1.2), at)).toEqual([about(0.2), about(0.2)])
    expect(both('width', rising(0.01), over(1, 1.2), at)).toEqual([about(0.2), about(0.2)])
    // .012 in .1: .108 more up to .020 over the surface.
    expect(both('width', rising(0.012), over(1, 1.2), at)).toEqual([about(0.2 + 0.9), about(0.2 + 0.9)])
  })
  it('below a ledge is that between the walls below it, and at the ledge that above it', () => {
    const ledge = cut(level(1, 1.05, 0.03), level(1.05, 1.2, 0.1))
    const at = (deep: number, by = 0) => ({ atDiameter: inch(1.5 - 2 * deep) - 2 * by })
    expect(both('width', ledge, over(1, 1.2), at(0.05))).toEqual([about(0.15), about(0.15)])
    expect(both('width', ledge, over(1, 1.2), at(0.02))).toEqual([about(0.2), about(0.2)])
    // A few picometers are arithmetic.
    expect(both('width', ledge, over(1, 1.2), at(0.03, 10))).toEqual([about(0.2), about(0.2)])
    expect(both('width', ledge, over(1, 1.2), at(0.03, 11))).toEqual([about(0.15), about(0.15)])
  })
  it('exactly at the second of two ledges is that above it', () => {
    const ledges = cut(level(1, 1.02, 0.02), level(1.02, 1.05, 0.03), level(1.05, 1.2, 0.1))
    expect(both('width', ledges, over(1, 1.2), { atDiameter: inch(1.44) })).toEqual([about(0.18), about(0.18)])
  })
  it('exactly at the foot of a flank over a ledge is to that foot, a hair below it to the wall behind', () => {
    const foot = cut(level(0.95, 1, 0.1), level(1, 1.05, 0.03), [1.05, 0.05, 1.1, 0])
    expect(both('width', foot, over(0.95, 1.1), { atDiameter: inch(1.4) })).toEqual([about(0.1), about(0.1)])
    expect(both('width', foot, over(0.95, 1.1), { atDiameter: inch(1.3999) })).toEqual([about(0.05), about(0.05)])
  })
  it('on a flank with a bend is on that part of it which is so deep', () => {
    const bent = cut([1, 0, 1.05, 0.02], [1.05, 0.02, 1.1, 0.1], level(1.1, 1.2, 0.1))
    const near = 1.05 + (0.03 / 0.08) * 0.05
    expect(both('width', bent, over(1, 1.2), { atDiameter: inch(1.4) })).toEqual([about(1.2 - near), about(1.2 - near)])
  })
  it('on a wall that bulges, on that side of its circle where the groove is; where the circle ends below, at its edge', () => {
    // About 45° of a circle of .2, from .141 beside its center, where it is the surface, to .08.
    const [r, dc] = [0.2, Math.sqrt(0.2 ** 2 - 0.14 ** 2)]
    const bottom = dc - Math.sqrt(0.2 ** 2 - 0.19 ** 2)
    const arc = { kind: 'arc', zc: inch(0.9), dc: inch(dc - 0.75), r: inch(r), side: -1 } as const
    const form = around([{ from: inch(1.04), to: inch(1.09), curve: arc, step: 1 }, piece(level(1.09, 1.2, bottom), 2)])
    const at = (deep: number) => 1.2 - (0.9 + Math.sqrt(r ** 2 - (dc - deep) ** 2))
    for (const deep of [0, 0.02, -0.01])
      expect(both('width', form, over(1.04, 1.2), { atDiameter: inch(1.5 - 2 * deep) })).toEqual([
        expect.closeTo(at(deep), 5),
        expect.closeTo(at(deep), 5),
      ])
    const high = { atDiameter: inch(1.5 + 2 * (r - dc) + 0.01) }
    expect(both('width', form, over(1.04, 1.2), high)).toEqual([about(0.16), about(0.16)])
  })
})

describe('a width where a circle is left', () => {
  /** Both halves of its circle are as high as the level there; the edge is one of them. */
  it('below a rounded wall is that between the walls below it', () => {
    // A quarter of .05 from the surface down, and a slot of .1 under it.
    const arc = { kind: 'arc', dc: inch(0.05 - 0.75), r: inch(0.05), side: -1 } as const
    const form = around([
      { from: inch(1), to: inch(1.05), curve: { ...arc, zc: inch(1) }, step: 1 },
      piece(level(1.05, 1.15, 0.1), 2),
      { from: inch(1.15), to: inch(1.2), curve: { ...arc, zc: inch(1.2) }, step: 3 },
    ])
    const at = (deep: number) => both('width', form, over(1, 1.2), { atDiameter: inch(1.5 - 2 * deep) })
    expect(at(0.02)).toEqual(Array(2).fill(about(0.2 - 2 * Math.sqrt(0.05 ** 2 - 0.03 ** 2))))
    for (const deep of [0.06, 0.08, 0.1]) expect(at(deep)).toEqual([about(0.1), about(0.1)])
  })
  it('over the two ends of a round tool that is ground less wide than round is that between the walls it leaves', () => {
    // Radius .1, .06 wide to each side, to .15 deep; its two sides are two cuts.
    const curve = { kind: 'arc', zc: inch(1.06), dc: inch(0.05 - 0.75), r: inch(0.1), side: 1 } as const
    const form = around([
      { from: inch(1), to: inch(1.06), curve, step: 1 },
      { from: inch(1.06), to: inch(1.12), curve, step: 2 },
    ])
    for (const deep of [0, 0.02, 0.04])
      expect(both('width', form, over(1, 1.12), { atDiameter: inch(1.5 - 2 * deep) })).toEqual([
        about(0.12),
        about(0.12),
      ])
  })
})

describe('a floor', () => {
  const sizes = (form: Form, operation = over(1, 1.3)) =>
    [both('root', form, operation), both('flatness', form, operation)].map((pair) => {
      expect(pair[1]).toBeCloseTo(pair[0]!, 8)
      return pair[0]
    })
  it('is what is level, with the small steps in it, and is so far from flat as those are high', () => {
    const form = cut([1, 0, 1.05, 0.1], level(1.05, 1.1, 0.1), level(1.1, 1.15, 0.099), [1.15, 0.0995, 1.2, 0.0985])
    expect(sizes(form)).toEqual([about(0.15), about(0.0015)])
  })
  it('takes in what is a tenth of the depth and .1 mm higher, and no more', () => {
    // .0100 and .0039 of .1.
    expect(sizes(cut([0.98, 0, 1, 0.05], level(1, 1.1, 0.0865), level(1.1, 1.3, 0.1)))[0]).toBeCloseTo(0.3, 8)
    expect(sizes(cut([0.98, 0, 1, 0.05], level(1, 1.1, 0.0855), level(1.1, 1.3, 0.1)))[0]).toBeCloseTo(0.2, 8)
    // The depth counts from the highest place of the form: .0060 of .06 here.
    expect(sizes(cut(level(1, 1.01, 0.04), level(1.01, 1.1, 0.0905), level(1.1, 1.3, 0.1)))[0]).toBeCloseTo(0.29, 8)
    expect(sizes(cut(level(1, 1.01, 0.04), level(1.01, 1.1, 0.0895), level(1.1, 1.3, 0.1)))[0]).toBeCloseTo(0.2, 8)
    // 2 mm deep, and just .3 mm higher.
    const [top, from] = [inch(0.75), inch(1)]
    const just = around([
      line(from, -top, from + MM, 1.7 * MM - top),
      line(from + MM, 1.7 * MM - top, from + 2 * MM, 1.7 * MM - top),
      line(from + 2 * MM, 2 * MM - top, from + 4 * MM, 2 * MM - top),
    ])
    expect(take('root', just, over(1, 1.15))! / MM).toBeCloseTo(3, 9)
  })
  it('goes on behind a short steep slope of up to .1 mm, not behind a higher one or a round', () => {
    const behind = (by: number) => cut(level(1, 1.1, 0.1), [1.1, 0.1, 1.101, 0.1 - by], level(1.101, 1.3, 0.1 - by))
    expect(sizes(behind(0.0038))).toEqual([about(0.3), about(0.0038)])
    expect(sizes(behind(0.0041))).toEqual([about(0.1), about(0)])
    // Just .1 mm, beside the flanks of V tools that went to two depths: arithmetic may find it a little higher.
    for (let angle = 20; angle < 90; angle++) {
      const form = [...stock]
      for (const [at, deep] of [
        [0, 2],
        [0.8, 1.9],
        [1.6, 2],
      ] as const) {
        const place = { z: inch(1.2) + at * MM, d: deep * MM - inch(0.75) }
        cutInto(form, swept(vee(0.04, angle, 0.2).pieces, [[place, place]], at))
      }
      expect(take('root', form, over(1, 1.6))! / MM).toBeCloseTo(1.6 + 0.04 * 25.4, 9)
    }
    const arc = { kind: 'arc', zc: inch(1.11), dc: inch(0.049 - 0.75), r: inch(0.05), side: 1 } as const
    const round = around([
      piece(level(1, 1.1, 0.1), 0),
      { from: inch(1.1), to: inch(1.12), curve: arc, step: 1 },
      piece(level(1.12, 1.3, 0.099), 2),
    ])
    expect(sizes(round)[0]).toBeCloseTo(0.1, 8)
  })
  it('is all of it where it slopes a little to one side, to the picometer', () => {
    const form = cut([1, 0.095, 1.2, 0.1])
    expect(take('root', form, over(1, 1.2))).toBe(inch(1.2) - inch(1))
    expect(sizes(form, over(1, 1.2))[1]).toBeCloseTo(0.005, 8)
  })
  it('of a corner begins at its face, where one cut went from the lower step into it', () => {
    const step = [line(0, inch(-0.6), inch(1), inch(-0.6)), line(inch(1), inch(-0.75), inch(4), inch(-0.75))]
    const form = [
      line(0, inch(-0.6), inch(0.95), inch(-0.6)),
      piece(level(0.95, 1.1, 0.2), 0),
      line(inch(1.1), inch(-0.75), inch(4), inch(-0.75)),
    ]
    const of = (id: Instrument) => toInch(measure(form, step, over(1, 1.1), { id, aim: 0, limits: null }))
    expect([of('legAlong'), of('root'), of('flatness')]).toEqual([about(0.1), about(0.1), 0])
  })
  it('is none where the deepest point is in a scratch or in a round', () => {
    const scratch = cut(
      level(1, 1.1, 0.099),
      [1.1, 0.099, 1.101, 0.102],
      [1.101, 0.102, 1.102, 0.099],
      level(1.102, 1.3, 0.099),
    )
    expect(both('root', scratch, over(1, 1.3))).toEqual([0, 0])
    expect(both('flatness', scratch, over(1, 1.3))).toEqual([null, null])
  })
  it('is no slope of more than 1 in 10', () => {
    expect(sizes(cut([1, 0.089, 1.1, 0.0985], level(1.1, 1.3, 0.0985)))[0]).toBeCloseTo(0.3, 8)
    const just = cut([0.99, 0, 1, 0.0885], [1, 0.0885, 1.1, 0.0985], level(1.1, 1.3, 0.0985))
    expect(sizes(just)[0]).toBeCloseTo(0.3, 8)
    expect(sizes(cut([1, 0.088, 1.1, 0.0985], level(1.1, 1.3, 0.0985)))[0]).toBeCloseTo(0.2, 8)
  })
  it('between fillets leaves out what is beside them by a tenth of their radius', () => {
    const dimensions = [{ id: 'cornerRadius', aim: inch(0.05), limits: null }] as const
    const filleted = over(1, 1.3, { dimensions })
    const form = cut(level(1, 1.05, 0.097), level(1.05, 1.15, 0.1), level(1.15, 1.26, 0.099), level(1.26, 1.3, 0.098))
    expect(sizes(form, filleted)).toEqual([about(0.3 - 2 * 0.055), about(0.001)])
    expect(sizes(form)).toEqual([about(0.3), about(0.003)])
    // A cut that ends just there is left out, as a cut that begins there is taken.
    const just = cut(level(1, 1.055, 0.097), level(1.055, 1.245, 0.1), level(1.245, 1.3, 0.098))
    expect(sizes(just, filleted)).toEqual([about(0.19), about(0)])
    // No room is left between two of .140: then all of it is looked at.
    const wide = over(1, 1.3, { dimensions: [{ ...dimensions[0], aim: inch(0.14) }] })
    expect(sizes(form, wide)).toEqual([about(0.3), about(0.003)])
  })
})

describe('an included angle', () => {
  const half = (run: number, rise: number) => (Math.atan(run / rise) * 180) / Math.PI
  it('is that of both flanks, each by its longest straight part', () => {
    const form = cut([1, 0, 1.02, 0.05], [1.02, 0.05, 1.05, 0.1], level(1.05, 1.1, 0.1), [1.1, 0.1, 1.14, 0])
    const angle = half(0.03, 0.05) + half(0.04, 0.1)
    expect([take('angle', form, over(1, 1.14)), take('angle', mirrored(form), over(2.86, 3))]).toEqual([
      about(angle),
      about(angle),
    ])
  })
  it('is by the first of two parts that are equally long', () => {
    const form = cut([1, 0, 1.03, 0.04], [1.03, 0.04, 1.06, 0.1], level(1.06, 1.1, 0.1), [1.1, 0.1, 1.14, 0])
    expect(take('angle', form, over(1, 1.14))).toBeCloseTo(half(0.03, 0.04) + half(0.04, 0.1), 8)
  })
  it('takes nothing for a flank that rises less than 1 in 10', () => {
    const form = cut(
      [1, 0, 1.03, 0.05],
      [1.03, 0.05, 1.23, 0.066],
      level(1.23, 1.3, 0.1),
      [1.3, 0.1, 1.5, 0.084],
      [1.5, 0.084, 1.54, 0],
    )
    const plain = half(0.03, 0.05) + half(0.04, 0.084)
    const edge = { ...groove(1, 0.2, 0.1, []).edge, ground: null }
    for (const operation of [over(1, 1.54), over(1, 1.54, { edge })])
      expect(take('angle', form, operation)).toBeCloseTo(plain, 6)
    for (const operation of [over(2.46, 3), over(2.46, 3, { edge })])
      expect(take('angle', mirrored(form), operation)).toBeCloseTo(plain, 6)
  })
  it('is none where there is one flank only, or none', () => {
    const one = cut([1, 0, 1.05, 0.1], level(1.05, 1.1, 0.1))
    expect(both('angle', one, over(1, 1.1))).toEqual([null, null])
    for (const high of [0.095, 0.09])
      expect(both('angle', cut([1, high, 1.1, 0.1], [1.1, 0.1, 1.2, high]), over(1, 1.2))).toEqual([null, null])
  })
  it('is of the flanks down to the deepest point, not of those of a second groove that runs into it', () => {
    const form = cut(
      [1, 0, 1.02, 0.1],
      level(1.02, 1.04, 0.1),
      [1.04, 0.1, 1.05, 0.06],
      [1.05, 0.06, 1.09, 0.09],
      [1.09, 0.09, 1.13, 0],
    )
    expect(take('angle', form, over(1, 1.13))).toBeCloseTo(half(0.02, 0.1) + half(0.04, 0.09), 6)
    expect(take('angle', mirrored(form), over(2.87, 3))).toBeCloseTo(half(0.02, 0.1) + half(0.04, 0.09), 6)
  })
  it('is not of those of a second groove that ends above its deepest point', () => {
    const form = cut([1, 0, 1.05, 0.1], [1.05, 0.02, 1.12, 0.09], [1.12, 0.09, 1.2, 0])
    const angle = half(0.05, 0.1) + half(0.08, 0.09)
    expect(take('angle', form, over(1, 1.2))).toBeCloseTo(angle, 6)
    expect(take('angle', mirrored(form), over(2.8, 3))).toBeCloseTo(angle, 6)
  })
  it('of flanks that a sloping face has left curved is that of the chord, inside the region of the groove', () => {
    const form = cut(
      [0.98, 0, 1, 0.01],
      [1, 0.01, 1.03, 0.05],
      [1.03, 0.05, 1.05, 0.1],
      level(1.05, 1.1, 0.1),
      [1.1, 0.1, 1.12, 0.04],
      [1.12, 0.04, 1.16, 0.01],
      [1.16, 0.01, 1.2, 0],
    )
    const edge = { ...groove(1, 0.2, 0.1, []).edge, ground: null }
    const angle = half(0.05, 0.09) + half(0.06, 0.09)
    expect(take('angle', form, over(1, 1.16, { edge }))).toBeCloseTo(angle, 6)
    expect(take('angle', mirrored(form), over(2.84, 3, { edge }))).toBeCloseTo(angle, 6)
    expect(take('angle', cut(level(1, 1.1, 0.1)), over(1, 1.1, { edge }))).toBe(null)
  })
})

describe('a radius', () => {
  /** On the end of a step 1 in from the free end, whose neighbor is low. */
  const step = [line(0, inch(-0.5), inch(1), inch(-0.5)), line(inch(1), inch(-0.75), inch(4), inch(-0.75))]
  const corner = (to: number, pieces: readonly Piece[]): number => {
    const form = [step[0]!, ...pieces, line(inch(1 + to), inch(-0.75), inch(4), inch(-0.75))]
    return measure(form, step, over(1, 1 + to), { id: 'radius', aim: 0, limits: null })! / inch(1)
  }
  const arc = (from: number, to: number, r: number): Piece => ({
    from: inch(1 + from),
    to: inch(1 + to),
    curve: { kind: 'arc', zc: inch(1 + r), dc: inch(r - 0.75), r: inch(r), side: -1 },
    step: 0,
  })
  const stair = (...parts: readonly Part[]) => parts.map(([a, b, c, d], i) => piece([1 + a, b, 1 + c, d], i))
  it('of a corner is that of the arc that makes up most of it', () => {
    expect(corner(0.12, [arc(0, 0.08, 0.125), arc(0.08, 0.12, 0.2)])).toBeCloseTo(0.125, 8)
    expect(corner(0.12, [arc(0, 0.04, 0.125), arc(0.04, 0.12, 0.2)])).toBeCloseTo(0.2, 8)
    // Half of it is not most: of the other half a gauge touches the end, .03 deep.
    const half = [arc(0, 0.05, 0.125), ...stair(level(0.05, 0.1, 0.03))]
    expect(corner(0.1, half)).toBeCloseTo(0.13 + Math.sqrt(2 * 0.1 * 0.03), 8)
  })
  it('of a corner without such an arc is what a gauge shows', () => {
    // An arc of .1 that is .045 of .12 long; beyond it next to nothing is cut, where a hollow is no corner.
    expect(corner(0.12, [arc(0, 0.045, 0.1), ...stair(level(0.045, 0.12, 0.004))])).toBeCloseTo(0.1, 8)
    const curve = { kind: 'arc', zc: inch(1.11), dc: inch(0.01 - 0.3 - 0.75), r: inch(0.3), side: 1 } as const
    const hollow = { from: inch(1.06), to: inch(1.16), curve, step: 3 }
    expect(corner(0.16, [arc(0, 0.06, 0.1), hollow])).toBeCloseTo(0.1, 8)
  })
  it('of a corner in steps is what a gauge shows on the lowest of them, away from its ends', () => {
    // On a radius of .1 a place .02 along is .04 deep, and one .04 along .02: (.1 − .02)² + (.1 − .04)² = .1².
    const lowest = [level(0.013, 0.02, 0.04), level(0.02, 0.04, 0.02)]
    expect(corner(0.1, stair(level(0, 0.013, 0.09), ...lowest, level(0.04, 0.1, 0.005)))).toBeCloseTo(0.1, 8)
    // Four and a half times as deep as far, and as far as deep.
    const ends = [level(0, 0.0123, 0.09), level(0.0123, 0.013, 0.058)] as const
    const tail = [level(0.04, 0.09, 0.005), level(0.09, 0.1, 0.022)] as const
    expect(corner(0.1, stair(...ends, ...lowest, ...tail))).toBeCloseTo(0.1, 8)
  })
  it('of a corner with a slanting step is where that is lowest', () => {
    const slant = stair(level(0, 0.025, 0.12), [0.025, 0.08, 0.035, 0.02], level(0.035, 0.1, 0.004))
    expect(corner(0.1, slant)).toBeCloseTo(0.025 + 0.08 + Math.sqrt(2 * 0.025 * 0.08), 8)
  })
  it('of a corner is seen up to four times as deep as far, and as far as deep', () => {
    const four = 0.05 + Math.sqrt(2 * 0.01 * 0.04)
    expect(corner(0.1, stair(level(0, 0.01, 0.04), level(0.01, 0.1, 0.002)))).toBeCloseTo(four, 8)
    expect(corner(0.1, stair(level(0, 0.04, 0.01), level(0.04, 0.1, 0.002)))).toBeCloseTo(four, 8)
  })
  it('of a corner stepped by a round tool is that through the lowest point, in the middle of its cut', () => {
    // On the slant of 45° through the corner, .03 along and .03 deep: (r − .03)² twice is r².
    const [r, at] = [0.05, 0.03]
    const center = at - r / Math.SQRT2
    const curve = { kind: 'arc', zc: inch(1) + center * INCH, dc: (center - 0.75) * INCH, r: inch(r), side: 1 } as const
    const cutBy = { from: inch(1.02), to: inch(1.04), curve, step: 5 }
    const [first, last] = stair(level(0, 0.02, 0.09), level(0.04, 0.1, 0.004))
    expect(corner(0.1, [first!, cutBy, last!])).toBeCloseTo(at * (2 + Math.SQRT2), 9)
  })
  it('of a corner that is nothing but a narrow notch is half of both its legs', () => {
    expect(corner(0.01, stair(level(0, 0.01, 0.09)))).toBeCloseTo(0.05, 8)
  })
  it('of fillets in steps is what the lowest place of each cut shows, in the mean of both', () => {
    // In a fillet of .05, .01 from the wall is .02 over the floor, and .02 from it .01; of .06 and .1 as much more.
    const form = cut(
      level(1, 1.01, 0.05),
      level(1.01, 1.02, 0.08),
      level(1.02, 1.024, 0.09),
      level(1.024, 1.045, 0.088),
      // Here it is more than four times as far from the wall as over the floor.
      level(1.045, 1.049, 0.0895),
      level(1.049, 1.12, 0.088),
      level(1.12, 1.2, 0.1),
      level(1.2, 1.3, 0.1),
      level(1.3, 1.36, 0.08),
      level(1.36, 1.38, 0.06),
      level(1.38, 1.4, 0.01),
    )
    // Near: .05 at .01, .05 at .02, .06 at .024. Far: .1 at .04 and at .02.
    const radius = ((0.05 + 0.05 + 0.06) / 3 + 0.1) / 2
    expect(both('cornerRadius', form, over(1, 1.4), { aim: inch(0.05) })).toEqual([about(radius), about(radius)])
    const nearer = form.flatMap((one) =>
      one.to === inch(1.12) ? [{ ...one, to: inch(1.1) }, piece(level(1.1, 1.12, 0.05), 20)] : [one],
    )
    // At twice the radius, .05 high, it still is.
    const more = ((0.05 + 0.05 + 0.06 + 0.1 + 0.05 + 0.1) / 4 + 0.1) / 2
    expect(both('cornerRadius', nearer, over(1, 1.4), { aim: inch(0.05) })).toEqual([about(more), about(more)])
    // A scratch between twice the radius and the middle is of no fillet.
    const scratched = form.flatMap((one) =>
      one.to === inch(1.2)
        ? [{ ...one, to: inch(1.13) }, piece(level(1.13, 1.15, 0.05), 20), { ...one, from: inch(1.15) }]
        : [one],
    )
    expect(both('cornerRadius', scratched, over(1, 1.4), { aim: inch(0.05) })).toEqual([about(radius), about(radius)])
  })
  it('of fillets that meet is that of each up to the middle', () => {
    const form = cut(
      level(1, 1.01, 0.05),
      level(1.01, 1.045, 0.08),
      level(1.045, 1.055, 0.1),
      level(1.055, 1.06, 0.076),
      level(1.06, 1.08, 0.06),
      level(1.08, 1.1, 0.01),
    )
    // Near .05 at .01. Far .024 up at .04, and .1 at .02.
    const radius = (0.05 + (0.064 + Math.sqrt(2 * 0.04 * 0.024) + 0.1) / 2) / 2
    expect(both('cornerRadius', form, over(1, 1.1), { aim: inch(0.05) })).toEqual([about(radius), about(radius)])
  })
  it('of fillets is seen up to four times as high as far from the wall, as far as high, and up to the middle', () => {
    const four = 0.05 + Math.sqrt(2 * 0.01 * 0.04)
    const high = cut(level(1, 1.01, 0.06), level(1.01, 1.39, 0.1), level(1.39, 1.4, 0.06))
    const far = cut(
      level(1, 1.01, 0.02),
      level(1.01, 1.04, 0.1),
      level(1.04, 1.05, 0.09),
      level(1.05, 1.35, 0.1),
      level(1.35, 1.36, 0.09),
      level(1.36, 1.39, 0.1),
      level(1.39, 1.4, 0.02),
    )
    for (const form of [high, far])
      expect(both('cornerRadius', form, over(1, 1.4), { aim: inch(0.05) })).toEqual([about(four), about(four)])
    const middle = cut(
      level(1, 1.01, 0.05),
      level(1.01, 1.04, 0.08),
      level(1.04, 1.05, 0.1),
      level(1.05, 1.06, 0.08),
      level(1.06, 1.09, 0.1),
      level(1.09, 1.1, 0.05),
    )
    // Near .05 at .01, and at the very middle .02 up. Far .1 at .04.
    const radius = ((0.05 + 0.07 + Math.sqrt(2 * 0.05 * 0.02)) / 2 + 0.1) / 2
    expect(both('cornerRadius', middle, over(1, 1.1), { aim: inch(0.05) })).toEqual([about(radius), about(radius)])
  })
  it('of fillets stepped by a round tool is that through the lowest point, in the middle of its cut', () => {
    // On the slant of 45° through the corner, .02 from the wall and .02 over the floor.
    const [r, at] = [0.05, 0.02]
    const center = at + r / Math.SQRT2
    const curve = { kind: 'arc', dc: (0.1 - center - 0.75) * INCH, r: inch(r), side: 1 } as const
    const [near, far] = [(1 + center) * INCH, (1.4 - center) * INCH]
    const form = around([
      piece(level(1, 1.01, 0.05), 0),
      { from: inch(1.01), to: inch(1.03), curve: { ...curve, zc: near }, step: 1 },
      piece(level(1.03, 1.37, 0.1), 2),
      { from: inch(1.37), to: inch(1.39), curve: { ...curve, zc: far }, step: 3 },
      piece(level(1.39, 1.4, 0.05), 4),
    ])
    expect(inches('cornerRadius', form, over(1, 1.4), { aim: inch(0.05) })).toBeCloseTo(at * (2 + Math.SQRT2), 9)
  })
  it('is exact to the picometer', () => {
    const form = cut(
      level(1, 1.01, 0.05),
      level(1.01, 1.02, 0.08),
      level(1.02, 1.38, 0.1),
      level(1.38, 1.39, 0.08),
      level(1.39, 1.4, 0.05),
    )
    expect(take('cornerRadius', form, over(1, 1.4), { aim: inch(0.05) })).toBe(inch(0.05))
  })
  it('of a sharp corner is none, and what stands beside it is no part of the corner itself', () => {
    const beside = cut(level(1, 1.01, 0.1), level(1.01, 1.02, 0.08), level(1.02, 1.4, 0.1))
    expect(both('cornerRadius', beside, over(1, 1.4), { aim: inch(0.05) })).toEqual([about(0.025), about(0.025)])
    expect(both('cornerRadius', cut(level(1, 1.4, 0.1)), over(1, 1.4), { aim: inch(0.05) })).toEqual([0, 0])
  })
})
