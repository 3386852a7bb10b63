import { describe, expect, it } from 'vitest'
import type { Move, Operation } from '../../src/moves/operation.ts'
import type { Placing } from '../../src/moves/placing.ts'
import { fedIn, fedTo } from '../../src/replay/contact.ts'
import { replay } from '../../src/replay/replay.ts'
import { bar, begin, bench, groove, inch, line, move, neck, past, round, shift, square, toInch, vee } from './shop.ts'

/** Where the reference point of the tool is with its dials at zero: worked out from where it was brought, and how far the dials had been turned. */
const setup = bar([1.5, 4])
const zeroOf = (operation: Operation) => {
  const { fromEnd, diameter } = replay(bench, setup, [operation]).operations[0]!.zero
  return [toInch(fromEnd), toInch(diameter)]
}
const at = (moves: readonly Move[], angle = 0) => zeroOf({ ...groove(1.125, 0.2, 0.072, moves), angle })
const zero = (slide: 'cross-feed' | 'compound') => move('zero', slide)
const about = (...values: readonly number[]) => values.map((value) => expect.closeTo(value, 9))

describe('the zero of an operation', () => {
  it('is where the tool is brought, and on the surface that it touches', () => {
    expect(at(begin)).toEqual(about(1.125, 1.5))
    expect(at([])).toEqual(about(1.125, 1.5))
  })
  it('goes with a dial that is set to zero again where it has been turned to', () => {
    expect(at([...begin, shift(8), zero('compound')])).toEqual(about(1.133, 1.5))
    const fed = move('feed-in', 'cross-feed', 10)
    expect(at([...begin, fed, zero('cross-feed')])).toEqual(about(1.125, 1.48))
  })
  it('with the compound swung goes along by the cosine and in by the sine of that', () => {
    const [cos, sin] = [Math.cos(Math.PI / 6), 1 / 2]
    expect(at([...begin, shift(8), zero('compound')], 30)).toEqual(about(1.125 + 0.008 * cos, 1.5 - 2 * 0.008 * sin))
    const fed = move('feed-in', 'cross-feed', 10)
    expect(at([...begin, fed, zero('cross-feed'), shift(8), zero('compound')], 30)).toEqual(
      about(1.125 + 0.008 * cos, 1.48 - 2 * 0.008 * sin),
    )
  })
  it('counts from where a slide without lost motion is, when the tool is brought to its place again', () => {
    expect(at([...begin, past(-20), move('align')])).toEqual(about(1.145, 1.5))
  })
})

describe('a tool that is brought', () => {
  const wide = { ...neck, edge: vee(0.1, 90, 0.05), moves: [] }
  const brought = (placing: Placing) => zeroOf({ ...wide, placing })[0]
  // Its corners are .05 beside its nose, which is .1 wide from the reference point.
  it.each([
    ['tailstock-corner', 1.05],
    ['headstock-corner', 0.85],
    ['nose-tailstock-corner', 1],
    ['nose-headstock-corner', 0.9],
    ['tip', 0.95],
  ] as const)('by its %s to a line', (point, place) => {
    expect(brought({ point, against: { line: inch(1) } })).toBeCloseTo(place, 9)
  })
  it('by its nose, though its flanks are bent and all of it stands out', () => {
    const [near, far] = [-0.05, 0.15]
    const pieces = [
      line(inch(near), inch(-0.04), inch(-0.02), inch(-0.01)),
      line(inch(-0.02), inch(-0.01), 0, inch(0.01)),
      line(0, inch(0.01), inch(0.1), inch(0.01)),
      line(inch(0.1), inch(0.01), inch(0.12), inch(-0.01)),
      line(inch(0.12), inch(-0.01), inch(far), inch(-0.04)),
    ]
    const bent = (point: Placing['point']) =>
      zeroOf({ ...wide, edge: { ...wide.edge, pieces }, placing: { point, against: { line: inch(1) } } })[0]
    expect(bent('nose-tailstock-corner')).toBeCloseTo(1, 9)
    expect(bent('nose-headstock-corner')).toBeCloseTo(0.9, 9)
    expect(bent('tip')).toBeCloseTo(0.95, 9)
  })
  it('to another place for the touch meets the diameter there', () => {
    // A taper whose diameter is 1 + z / 5. Of a square end .148 wide the corner toward the headstock touches.
    const taper = { ...setup, stock: [line(0, inch(-0.5), inch(4), inch(-0.9))] }
    const moves = [move('align'), move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
    const touched = (at: Operation['touch']['at'], locked = false) => {
      const list = locked ? moves.toSpliced(1, 0, move('lock')) : moves
      const operation = { ...neck, moves: list, touch: { diameter: inch(1.2), at } }
      return toInch(replay(bench, taper, [operation]).operations[0]!.zero.diameter)
    }
    const over = { point: 'tailstock-corner', against: { over: [inch(1), inch(1.2)] } } as const
    const past = { point: 'headstock-corner', against: { past: inch(1), by: inch(0.05) } } as const
    expect(touched(null)).toBeCloseTo(1 + (1.125 + 0.148) / 5, 8)
    expect(touched(over)).toBeCloseTo(1 + (1.1 + 0.148) / 5, 8)
    expect(touched(past)).toBeCloseTo(1 + 1.05 / 5, 8)
    // A carriage that is locked stays where it is.
    expect(touched(past, true)).toBeCloseTo(1 + (1.125 + 0.148) / 5, 8)
  })
  it('between two lines, to a face, or short of one', () => {
    const point = 'tip'
    expect(brought({ point, against: { between: [inch(1), inch(1.2)] } })).toBeCloseTo(1.05, 9)
    expect(brought({ point, against: { face: inch(1) } })).toBeCloseTo(0.95, 9)
    expect(brought({ point, against: { beside: inch(1), gap: inch(0.01) } })).toBeCloseTo(0.94, 9)
  })
})

type Steps = readonly (readonly [number, number])[]

describe('the place that a tool is brought to', () => {
  const said = (placing: Placing, ...steps: Steps) => {
    const { faults } = replay(bench, bar(...steps), [
      { ...neck, lines: [inch(0.6), inch(1.125)], placing, moves: [move('align')] },
    ])
    return faults.filter(({ kind }) => kind === 'set-up').map(({ say }) => say)
  }
  const plain = [[1.4, 1] as const, [1.5, 3] as const]
  it('is a line that was scribed, or where a step of the stock begins or ends', () => {
    const at = (line: number) => said({ point: 'tip', against: { line: inch(line) } }, ...plain)
    for (const line of [0, 0.6, 1, 1.125, 4]) expect(at(line)).toEqual([])
    for (const line of [0.601, 1.001, 3.999])
      expect(at(line)).toEqual(['The tool is brought to a line that was not scribed.'])
  })
  it('between two lines is so if both are', () => {
    const at = (...between: [number, number]) =>
      said({ point: 'tip', against: { between: [inch(between[0]), inch(between[1])] } }, ...plain)
    expect(at(0.6, 1.125)).toEqual([])
    expect(at(0.6, 1.2)).toEqual(['The tool is brought to a line that was not scribed.'])
    expect(at(0.7, 1.125)).toEqual(['The tool is brought to a line that was not scribed.'])
  })
  it('is a face that rises on that side of the tool', () => {
    const none = ['The tool is brought to a face that is not there.']
    const near = (face: number, ...steps: Steps) =>
      said({ point: 'tailstock-corner', against: { face: inch(face) } }, ...steps)
    const far = (face: number, ...steps: Steps) =>
      said({ point: 'headstock-corner', against: { face: inch(face) } }, ...steps)
    const beside = (face: number, ...steps: Steps) =>
      said({ point: 'tailstock-corner', against: { beside: inch(face), gap: 0 } }, ...steps)
    expect(near(1, [1.6, 1], [1.5, 3])).toEqual([])
    expect(near(1, [1.4, 1], [1.5, 3])).toEqual(none)
    expect(far(1, [1.4, 1], [1.5, 3])).toEqual([])
    expect(far(1, [1.6, 1], [1.5, 3])).toEqual(none)
    expect(far(0.5, [1.4, 1], [1.5, 3])).toEqual(none)
    // In front of a corner the tool is on the side that has no metal, or less.
    expect(beside(1, [1.4, 1], [1.5, 3])).toEqual([])
    expect(beside(0, [1.4, 1], [1.5, 3])).toEqual([])
    expect(beside(1, [1.6, 1], [1.5, 3])).toEqual(none)
    expect(beside(4, [1.6, 1], [1.5, 3])).toEqual(none)
  })
})

describe('an edge that is fed to the metal', () => {
  const part = [line(0, inch(-0.75), inch(2), inch(-0.75)), line(inch(2), inch(-1), inch(4), inch(-1))]
  it('straight in meets the highest metal under it', () => {
    expect(fedIn(square(0.1).pieces, part, inch(1))).toEqual({ reference: inch(-0.75), metal: inch(-0.75) })
    expect(fedIn(square(0.1).pieces, part, inch(1.95))).toEqual({ reference: inch(-1), metal: inch(-1) })
    expect(fedIn(square(0.1).pieces, part, inch(5))).toBe(null)
    // A round end of .1 whose tip is .06 before the step meets the step's corner .02 behind its tip.
    const met = fedIn(round(0.1).pieces, part, inch(1.94))!
    expect([met.reference, met.metal].map(toInch)).toEqual([expect.closeTo(-0.98, 8), expect.closeTo(-1, 8)])
  })
  const to = (z: number, deep: number, way: { z: number; d: number }) => {
    const travel = fedTo(square(0.1).pieces, part, { z: inch(z), d: inch(deep - 0.75) }, way)
    return travel === null ? null : toInch(travel)
  }
  it('along the work stops at the face, however far that is, or finds none within 50 mm', () => {
    expect(to(1.85, -0.1, { z: 1, d: 0 })).toBeCloseTo(0.05, 9)
    expect(to(0.5, -0.1, { z: 1, d: 0 })).toBeCloseTo(1.4, 9)
    expect(to(1.85, -0.3, { z: 1, d: 0 })).toBe(null)
    expect(to(1.85, -0.1, { z: -1, d: 0 })).toBe(null)
    const [near, far] = [50 / 25.4 - 0.001, 50 / 25.4 + 0.001]
    expect(to(1.9 - near, -0.1, { z: 1, d: 0 })).toBeCloseTo(near, 6)
    expect(to(1.9 - far, -0.1, { z: 1, d: 0 })).toBe(null)
  })
  it('on a slant goes as much further as the slant is longer', () => {
    expect(to(1.85, -0.1, { z: 0.8, d: 0.6 })).toBeCloseTo(0.05 / 0.8, 9)
    expect(to(1.5, -0.03, { z: 0.8, d: 0.6 })).toBeCloseTo(0.03 / 0.6, 9)
  })
  it('is there already where it begins in the metal', () => {
    expect(to(1.85, 0.01, { z: 1, d: 0 })).toBe(0)
    expect(to(1.905, -0.1, { z: -1, d: 0 })).toBe(0)
  })
})
