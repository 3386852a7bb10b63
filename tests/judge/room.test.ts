import { describe, expect, it } from 'vitest'
import { squareForm } from '../../src/features/groove/draft.ts'
import { besideOf } from '../../src/judge/beside.ts'
import { type Judged, judge } from '../../src/judge/judge.ts'
import { offForm } from '../../src/judge/room.ts'
import type { Form } from '../../src/moves/form.ts'
import type { Operation, Setup, WantedDimension } from '../../src/moves/operation.ts'
import { arcPiece } from '../../src/moves/pieces.ts'
import type { Fault } from '../../src/moves/trace.ts'
import { cutInto } from '../../src/replay/form/insert.ts'
import { startOf } from '../../src/replay/replay.ts'
import { bar, bench, groove, inch, line, toInch, vee } from '../replay/shop.ts'

/**
 * What was cut is put down by hand here, and judged against a drawing: .250 wide at 1.000 and .100 deep in a bar of 1.500, dials of .001 that read
 * depth. Half a mark is .0005 each way. Expected by plain sums.
 */
const setup = bar([1.5, 4])
const before = startOf(setup)

type Cut = { near?: number; far?: number; depth?: number }
const cutOf = ({ near = 1, far = 1.25, depth = 0.1 }: Cut): Form => {
  const part = [...setup.stock]
  cutInto(part, [line(inch(near), inch(depth - 0.75), inch(far), inch(depth - 0.75))])
  return part
}
const drawn = (...dimensions: readonly WantedDimension[]): Operation => ({ ...groove(1, 0.25, 0.1, []), dimensions })
const dimension = (id: WantedDimension['id'], aim: number, limits?: readonly [number, number]): WantedDimension => ({
  id,
  aim: inch(aim),
  limits: limits === undefined ? null : [inch(limits[0]), inch(limits[1])],
})
const judged = (operation: Operation, surely: Form, possibly: Form = surely) =>
  judge(bench, operation, before, { ...NO_TRACE, surely, possibly }, [])
const NO_TRACE = { zero: { fromEnd: 0, diameter: 0 }, slides: [], sizes: [], at: {}, clearance: {}, taken: {}, met: {} }
const one = (sizes: readonly Judged[], id: string) => sizes.find((size) => size.id === id)!
/** Metal gone beyond the room, in tenths of a thousandth of an inch along or down; the wall is square, so a wall too far is the whole depth. */
const gone = (operation: Operation, cut: Cut) => {
  const form = cutOf(cut)
  return offForm(bench, operation, before, { surely: form, possibly: form }).gone > 0
}
const left = (operation: Operation, cut: Cut) => {
  const form = cutOf(cut)
  return offForm(bench, operation, before, { surely: form, possibly: form }).left > 0
}

describe('the room of each wall', () => {
  const width = dimension('width', 0.25, [0.246, 0.256])
  // [drawn place, how far the near wall may go toward the free end, how far the far wall toward the headstock]
  it.each([
    ['near', dimension('near', 1), 0.0005, 0.0065],
    ['far', dimension('far', 1.25), 0.0065, 0.0005],
    ['center', dimension('center', 1.125), 0.0035, 0.0035],
    ['near ±.002', dimension('near', 1, [0.998, 1.002]), 0.002, 0.008],
    ['near +.003 −.001', dimension('near', 1, [0.999, 1.003]), 0.001, 0.009],
    ['far +.003 −.001', dimension('far', 1.25, [1.249, 1.253]), 0.007, 0.003],
    ['center ±.002', dimension('center', 1.125, [1.123, 1.127]), 0.005, 0.005],
    ['nothing', null, 0.0065, 0.0065],
  ] as const)('with %s drawn: the width takes its limits from the wall that the drawing does not place', (...row) => {
    const [, place, near, far] = row
    const operation = drawn(width, ...(place === null ? [] : [place]))
    expect([gone(operation, { near: 1 - near }), gone(operation, { near: 1 - near - 0.0001 })]).toEqual([false, true])
    expect([gone(operation, { far: 1.25 + far }), gone(operation, { far: 1.2501 + far })]).toEqual([false, true])
  })

  it.each([
    ['near', dimension('near', 1), 0.004],
    ['near +.006 −.010', dimension('near', 1, [0.99, 1.006]), 0.006],
    ['far ±.002', dimension('far', 1.25, [1.248, 1.252]), 0.004],
  ] as const)('with %s drawn so much may be left on a wall', (_, place, most) => {
    const operation = drawn(width, place)
    expect([left(operation, { near: 1 + most }), left(operation, { near: 1.0001 + most })]).toEqual([false, true])
    expect([left(operation, { far: 1.25 - most }), left(operation, { far: 1.2499 - most })]).toEqual([false, true])
  })

  it('is as much more as a ridge may stand out of an arc that is stepped along, not of a straight wall and floor', () => {
    const cusp = { most: inch(0.002), given: false }
    const straight: Operation = { ...drawn(dimension('width', 0.25)), cusp }
    expect([left(straight, { depth: 0.0995 }), left(straight, { depth: 0.0994 })]).toEqual([false, true])
    // Half a circle of .125 radius, its middle at the surface: .1225 deep is .0025 left, half a mark and the ridge.
    const round = (r: number) => [arcPiece(inch(1.125 - r), inch(1.125 + r), inch(1.125), inch(-0.75), inch(r), 1)]
    const hollow: Operation = { ...straight, wanted: round(0.125) }
    const leaves = (r: number): boolean => {
      const form = [...setup.stock]
      cutInto(form, round(r))
      return offForm(bench, hollow, before, { surely: form, possibly: form }).left > 0
    }
    expect([leaves(0.1225), leaves(0.1224)]).toEqual([false, true])
    expect([gone(straight, { depth: 0.1005 }), gone(straight, { depth: 0.1006 })]).toEqual([false, true])
  })

  it('is half a mark where nothing has limits', () => {
    const operation = drawn(dimension('width', 0.25), dimension('depth', 0.1), dimension('near', 1))
    expect([gone(operation, { near: 0.9995 }), gone(operation, { near: 0.9994 })]).toEqual([false, true])
    expect([gone(operation, { depth: 0.1005 }), gone(operation, { depth: 0.1006 })]).toEqual([false, true])
    expect([left(operation, { depth: 0.0995 }), left(operation, { depth: 0.0994 })]).toEqual([false, true])
    expect([left(operation, { far: 1.2495 }), left(operation, { far: 1.2494 })]).toEqual([false, true])
  })
})

describe('the room of a bottom', () => {
  // A diameter counts twice, and the other way round: .004 over is .002 left, .002 under .001 gone.
  const bottom = drawn(dimension('width', 0.25), { ...dimension('bottomDiameter', 1.3, [1.298, 1.304]), fixed: true })
  it('is half of what its diameter has', () => {
    expect([gone(bottom, { depth: 0.101 }), gone(bottom, { depth: 0.1011 })]).toEqual([false, true])
    expect([left(bottom, { depth: 0.098 }), left(bottom, { depth: 0.0979 })]).toEqual([false, true])
  })
  it('is told as a size that is over or under', () => {
    const deep = judged(bottom, cutOf({ depth: 0.102 }))
    expect(one(deep.sizes, 'bottomDiameter')).toMatchObject({ verdict: 'gone', maybe: false })
    expect(toInch(one(deep.sizes, 'bottomDiameter').by)).toBeCloseTo(0.002, 6)
    expect([deep.saved, deep.proven]).toEqual([false, false])
    const high = judged(bottom, cutOf({ depth: 0.097 }))
    expect(one(high.sizes, 'bottomDiameter')).toMatchObject({ verdict: 'left', maybe: false })
    expect([high.saved, high.proven, high.leftAlways]).toEqual([true, false, true])
    expect(judged(bottom, cutOf({})).proven).toBe(true)
  })
  it('that only some backlash spoils is said to be so', () => {
    const maybe = judged(bottom, cutOf({}), cutOf({ depth: 0.102 }))
    expect(one(maybe.sizes, 'bottomDiameter')).toMatchObject({ verdict: 'gone', maybe: true })
    const short = judged(bottom, cutOf({ depth: 0.097 }), cutOf({}))
    expect(one(short.sizes, 'bottomDiameter')).toMatchObject({ verdict: 'left', maybe: true })
    expect(short.leftAlways).toBe(false)
  })
})

describe('a size without limits', () => {
  const plain = drawn(dimension('width', 0.25), dimension('depth', 0.1), { ...dimension('flatness', 0) })
  it.each([
    // Two walls, each half a mark off: .001. A depth half a mark, a bottom's steps twice that.
    ['width', { far: 1.251 }, { far: 1.2511 }, 'gone'],
    ['width', { far: 1.249 }, { far: 1.2489 }, 'left'],
    ['depth', { depth: 0.1005 }, { depth: 0.1006 }, 'gone'],
    ['depth', { depth: 0.0995 }, { depth: 0.0994 }, 'left'],
  ] as const)('%s has what the dials can do', (id, inside, outside, verdict) => {
    expect(one(judged(plain, cutOf(inside)).sizes, id).verdict).toBe('holds')
    expect(one(judged(plain, cutOf(outside)).sizes, id).verdict).toBe(verdict)
  })
  const floorOf = (...depths: readonly number[]): Form => {
    const part = [...setup.stock]
    const each = 0.25 / depths.length
    depths.forEach((depth, i) => {
      const [from, to] = [inch(1 + i * each), inch(1 + (i + 1) * each)]
      cutInto(part, [{ ...line(from, inch(depth - 0.75), to, inch(depth - 0.75)), step: i }])
    })
    return part
  }
  it('flatness has a mark', () => {
    expect(one(judged(plain, floorOf(0.1005, 0.0995)).sizes, 'flatness')).toMatchObject({ verdict: 'holds' })
    const uneven = one(judged(plain, floorOf(0.1005, 0.0994)).sizes, 'flatness')
    expect(uneven.verdict).toBe('left')
    expect(toInch(uneven.by)).toBeCloseTo(0.0011, 6)
  })
})

describe('metal left where every size holds', () => {
  it('on a floor is told as its depth there, by the one size that has limits, and the floor is not flat', () => {
    const limits = drawn(
      dimension('width', 0.25),
      dimension('depth', 0.1, [0.099, 0.101]),
      dimension('bottomDiameter', 1.3),
      { id: 'flatness', aim: 0, limits: [0, inch(0.01)] },
    )
    const part = [...setup.stock]
    cutInto(part, [
      line(inch(1), inch(-0.65), inch(1.1), inch(-0.65)),
      line(inch(1.1), inch(-0.653), inch(1.25), inch(-0.653)),
    ])
    const { sizes, saved } = judged(limits, part)
    // .003 short of .100 at that end: .097 there, .002 under the limit.
    expect(one(sizes, 'depth')).toMatchObject({ verdict: 'left', maybe: false })
    expect(toInch(one(sizes, 'depth').by)).toBeCloseTo(0.002, 6)
    expect(toInch(one(sizes, 'depth').surely)).toBeCloseTo(0.097, 6)
    expect(one(sizes, 'bottomDiameter')).toMatchObject({ verdict: 'left', by: 0 })
    expect(toInch(one(sizes, 'bottomDiameter').surely)).toBeCloseTo(1.306, 6)
    expect(one(sizes, 'flatness')).toMatchObject({ verdict: 'left', by: 0 })
    expect(toInch(one(sizes, 'flatness').possibly)).toBeCloseTo(0.003, 6)
    expect(one(sizes, 'width').verdict).toBe('holds')
    expect(saved).toBe(true)
  })
  it('is told so too where the floor runs out over a lower step, up to its very end', () => {
    const lower = { ends: bar([1, 1], [1.5, 3]), on: bar([1.5, 1.25], [1, 2.75]) }
    const depth = dimension('depth', 0.1, [0.099, 0.101])
    const told = (steps: Setup, ...cut: Form) => {
      const part = [...steps.stock]
      cutInto(part, cut)
      const operation = drawn(depth, { id: 'flatness', aim: 0, limits: [0, inch(0.01)] })
      const { sizes } = judge(bench, operation, startOf(steps), { ...NO_TRACE, surely: part, possibly: part }, [])
      return sizes.map(({ id, verdict, by }) => [id, verdict, Math.round(toInch(by) * 1e6) / 1e6])
    }
    const floor = (near: number, near0: number, far: number, far0: number) =>
      line(inch(near), inch(near0 - 0.75), inch(far), inch(far0 - 0.75))
    const all = [
      ['depth', 'left', 0.002],
      ['flatness', 'left', 0],
    ]
    // .003 short over a part of it: away from the step, at it, and only just at it.
    expect(told(lower.ends, floor(1, 0.1, 1.1, 0.1), floor(1.1, 0.097, 1.25, 0.097))).toEqual(all)
    expect(told(lower.ends, floor(1, 0.097, 1.1, 0.097), floor(1.1, 0.1, 1.25, 0.1))).toEqual(all)
    expect(told(lower.ends, floor(1, 0.097, 1.1, 0.1), floor(1.1, 0.1, 1.25, 0.1))).toEqual(all)
    expect(told(lower.on, floor(1, 0.1, 1.1, 0.1), floor(1.1, 0.097, 1.25, 0.097))).toEqual(all)
    expect(told(lower.on, floor(1, 0.1, 1.1, 0.1), floor(1.1, 0.1, 1.25, 0.097))).toEqual(all)
  })
  it('by the bottom diameter counts twice', () => {
    const bottom = drawn(dimension('width', 0.25), dimension('bottomDiameter', 1.3, [1.298, 1.302]))
    const part = [...setup.stock]
    cutInto(part, [
      line(inch(1), inch(-0.65), inch(1.1), inch(-0.65)),
      line(inch(1.1), inch(-0.653), inch(1.25), inch(-0.653)),
    ])
    const { sizes } = judged(bottom, part)
    expect(toInch(one(sizes, 'bottomDiameter').by)).toBeCloseTo(0.004, 6)
    expect(toInch(one(sizes, 'bottomDiameter').surely)).toBeCloseTo(1.306, 6)
  })
  it('off the floor is told by the shape', () => {
    // A hump in the middle of a V's flank: the depth at the bottom, the width at the surface and the place all hold.
    const v: Operation = {
      ...drawn(dimension('width', 0.25), dimension('angle', 0), dimension('depth', 0.125)),
      wanted: [
        line(inch(1), inch(-0.75), inch(1.125), inch(-0.625)),
        line(inch(1.125), inch(-0.625), inch(1.25), inch(-0.75)),
      ],
      dimensions: [dimension('width', 0.25), { id: 'angle', aim: 90, limits: null }, dimension('depth', 0.125)],
    }
    const part = [...setup.stock]
    cutInto(part, v.wanted)
    expect(judged(v, part).proven).toBe(true)
    const humped = [...setup.stock]
    cutInto(humped, [
      line(inch(1), inch(-0.75), inch(1.06), inch(-0.69)),
      line(inch(1.06), inch(-0.695), inch(1.065), inch(-0.69)),
      line(inch(1.065), inch(-0.685), inch(1.125), inch(-0.625)),
      v.wanted[1]!,
    ])
    const { sizes, proven } = judged(v, humped)
    expect(proven).toBe(false)
    expect(sizes.filter(({ verdict }) => verdict !== 'holds').map(({ id, by }) => [id, by])).toEqual([['angle', 0]])
  })
})

describe('the walls of a V', () => {
  const half = Math.tan(Math.PI / 9)
  /** .100 deep, 40° with flat root .05: the edge moves tan 20° along for every bit deeper. */
  const wide = 0.05 + 0.2 * half
  const v: Operation = {
    ...groove(1, wide, 0.1, []),
    edge: vee(0.05, 40, 0.2),
    wanted: vee(0.05, 40, 0.1).pieces.map(({ curve }) => {
      if (curve.kind !== 'line') throw new Error('flat')
      const at = inch(1 + 0.1 * half)
      return line(curve.z0 + at, curve.d0 - inch(0.65), curve.z1 + at, curve.d1 - inch(0.65))
    }),
    dimensions: [dimension('depth', 0.1, [0.096, 0.104]), dimension('near', 1)],
  }
  const deeper = (by: number): Form => {
    const part = [...setup.stock]
    const at = inch(1 + 0.1 * half)
    cutInto(
      part,
      vee(0.05, 40, 0.2).pieces.map(({ curve }) => {
        if (curve.kind !== 'line') throw new Error('flat')
        return line(curve.z0 + at, curve.d0 + inch(by - 0.65), curve.z1 + at, curve.d1 + inch(by - 0.65))
      }),
    )
    return part
  }
  it('move out as it goes deeper within its limits, and no further', () => {
    const off = (by: number) => {
      const form = deeper(by)
      return offForm(bench, v, before, { surely: form, possibly: form })
    }
    expect([off(0.004).gone, off(-0.004).left]).toEqual([0, 0])
    expect(off(0.0045).gone).toBeGreaterThan(0)
    expect(off(-0.0045).left).toBeGreaterThan(0)
    // Half a mark along and .004 of depth at tan 20°.
    expect(toInch(off(0).room.edge)).toBeCloseTo(0.0005 + 0.004 * half, 5)
  })
})

describe('the walls over round corners', () => {
  it('stand square, however deep the bottom may be', () => {
    const corners: Operation = {
      ...drawn(dimension('depth', 0.1, [0.096, 0.104]), dimension('near', 1)),
      wanted: squareForm(inch(1), inch(1.25), inch(0.1 - 0.75), inch(0.03), inch(-0.75)),
    }
    const moved = (by: number): Form => {
      const part = [...setup.stock]
      cutInto(part, squareForm(inch(1 - by), inch(1.25 - by), inch(0.1 - 0.75), inch(0.03), inch(-0.75)))
      return part
    }
    const over = (by: number) => {
      const form = moved(by)
      return offForm(bench, corners, before, { surely: form, possibly: form }).gone > 0
    }
    expect([over(0.0005), over(0.00052)]).toEqual([false, true])
  })
})

describe('metal gone beside a feature', () => {
  const steps = bar([1, 1], [1.5, 3])
  const start = startOf(steps)
  const operation = drawn(dimension('width', 0.25), dimension('near', 1))
  const cut = (near: number): Form => {
    const part = [...steps.stock]
    cutInto(part, [line(inch(near), inch(-0.45), inch(1.25), inch(-0.45))])
    return part
  }
  const trace = (surely: Form, possibly = surely) => ({ ...NO_TRACE, surely, possibly })
  const allowed = [
    line(0, inch(-0.5), inch(1), inch(-0.5)),
    line(inch(1), inch(-0.45), inch(1.25), inch(-0.45)),
    line(inch(1.25), inch(-0.75), inch(4), inch(-0.75)),
  ]
  it('is told with its side, how far and how deep', () => {
    const [found, ...more] = besideOf(operation, start, trace(cut(0.99)), allowed)
    expect(more).toEqual([])
    expect(found).toMatchObject({ side: 'tailstock', maybe: false })
    expect([toInch(found!.along), toInch(found!.deep)]).toEqual([expect.closeTo(0.01, 6), expect.closeTo(0.05, 6)])
    expect(besideOf(operation, start, trace(cut(1)), allowed)).toEqual([])
  })
  it('is not what the feature itself takes from its own surface', () => {
    const own = [...setup.stock]
    cutInto(own, [line(inch(0.9), inch(-0.65), inch(1.25), inch(-0.65))])
    const plain = [
      line(0, inch(-0.75), inch(1), inch(-0.75)),
      line(inch(1), inch(-0.65), inch(1.25), inch(-0.65)),
      line(inch(1.25), inch(-0.75), inch(4), inch(-0.75)),
    ]
    expect(besideOf(operation, before, trace(own), plain)).toEqual([])
  })
  it('is told as possible where only some backlash takes it', () => {
    expect(besideOf(operation, start, trace(cut(1), cut(0.99)), allowed)).toMatchObject([{ maybe: true }])
  })
})

describe('the edges of a hollow', () => {
  it('move out as its circle runs out at the surface', () => {
    // Radius .25, .1 deep: half as wide √(2 · .25 · .1 − .1²) = .2, and there it runs out .15 deep on .2 along: 3/4 of the depth.
    const hollow: Operation = {
      ...drawn(dimension('depth', 0.1, [0.096, 0.104]), dimension('near', 1)),
      wanted: [arcPiece(inch(1), inch(1.4), inch(1.2), inch(0.1 - 0.25 - 0.75), inch(0.25), 1)],
      region: { from: inch(1), to: inch(1.4) },
    }
    const { room } = offForm(bench, hollow, before, { surely: setup.stock, possibly: setup.stock })
    expect(toInch(room.edge)).toBeCloseTo(0.0005 + 0.004 * 0.75, 4)
  })
})

describe('a judgment', () => {
  const fault = (move: number, kind: Fault['kind'] = 'not-clear'): Fault => ({
    kind,
    move,
    operation: 0,
    by: 1,
    say: '',
  })
  const plain = drawn(dimension('width', 0.25), dimension('depth', 0.1))
  const of = (cut: Form, faults: readonly Fault[], possibly: Form = cut) =>
    judge(bench, plain, before, { ...NO_TRACE, surely: cut, possibly }, faults)
  it('tells faults in the order of the moves, what is seen on the form last', () => {
    const faults = [fault(-1), fault(7), fault(0), fault(2)]
    expect(of(cutOf({}), faults).faults.map(({ move }) => move)).toEqual([0, 2, 7, -1])
  })
  it('does not count what is seen on the form alone where all is within the limits, but every other fault', () => {
    const form = [fault(-1, 'metal-left'), fault(3, 'outside-form'), fault(-1, 'open-form')]
    expect(of(cutOf({}), form)).toMatchObject({ proven: true, faults: [] })
    expect(of(cutOf({}), [...form, fault(5, 'open-form')]).faults).toHaveLength(1)
    expect(of(cutOf({}), [fault(1)]).proven).toBe(false)
    expect(of(cutOf({ depth: 0.11 }), form).faults).toHaveLength(3)
  })
  it('names the move that left what only some backlash leaves', () => {
    const possibly = [...setup.stock]
    cutInto(possibly, [
      { ...line(inch(1), inch(-0.65), inch(1.2), inch(-0.65)), step: 4 },
      { ...line(inch(1.2), inch(-0.64), inch(1.25), inch(-0.64)), step: 9 },
    ])
    const { faults } = of(cutOf({}), [fault(-1, 'open-form')], possibly)
    expect(faults.map(({ move }) => move)).toEqual([9])
    // The first move of all, on a slope that is furthest off where it ends; what was there before any move is nobody's.
    const sloping = (step: number): Form => {
      const part = [...setup.stock]
      const slope = line(inch(1.2), inch(-0.65), inch(1.25), inch(-0.64))
      cutInto(part, [
        { ...line(inch(1), inch(-0.65), inch(1.2), inch(-0.65)), step: 4 },
        { ...slope, step },
      ])
      return part
    }
    const moves = (step: number) =>
      of(cutOf({}), [fault(-1, 'open-form')], sloping(step)).faults.map(({ move }) => move)
    expect([moves(0), moves(1), moves(-1)]).toEqual([[0], [1], [-1]])
    // Any other fault of the form has no move of its own.
    const deep = [...setup.stock]
    cutInto(deep, [line(inch(1), inch(-0.64), inch(1.25), inch(-0.64))])
    const others = of(deep, [fault(-1, 'metal-left'), fault(2, 'open-form')], possibly)
    expect(others.faults.map(({ move }) => move)).toEqual([2, -1])
    expect(of(cutOf({ depth: 0.11 }), [fault(-1, 'open-form')]).faults.map(({ move }) => move)).toEqual([-1])
  })
  it('blames the wall that is further off for a width, and no wall where nothing is cut', () => {
    const side = (cut: Form) => one(of(cut, []).sizes, 'width').side
    expect(side(cutOf({ far: 1.254 }))).toBe('headstock')
    expect(side(cutOf({ near: 0.996 }))).toBe('tailstock')
    expect(side(cutOf({ near: 0.997, far: 1.253 }))).toBe(null)
    expect(side(cutOf({ near: 1.002, far: 1.246 }))).toBe('headstock')
    expect(side(cutOf({}))).toBe(null)
    expect(side([...setup.stock])).toBe(null)
    // A nanometer further is no further: such are the errors of arithmetic.
    const wider = (by: number): Form => {
      const part = [...setup.stock]
      cutInto(part, [line(inch(0.997), inch(-0.65), inch(1.253) + by, inch(-0.65))])
      return part
    }
    expect([side(wider(1000)), side(wider(1001))]).toEqual([null, 'headstock'])
  })
})
