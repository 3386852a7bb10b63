import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Form, Piece } from '../../src/moves/form.ts'
import { differ, excess, overlap, touches } from '../../src/replay/form/compare.ts'
import { depthAt } from '../../src/replay/form/curve.ts'
import { grown, shrunk } from '../../src/replay/form/dilate.ts'
import { cutInto, envelope, envelopeOf } from '../../src/replay/form/insert.ts'
import { swept } from '../../src/replay/form/sweep.ts'
import { corner, inch, line, round, square, vee } from './shop.ts'

/** The deepest any piece reaches at z, by asking them all. */
const deepest = (form: Form, z: number): number =>
  Math.max(...form.filter(({ from, to }) => from <= z && z <= to).map(({ curve }) => depthAt(curve, z)))
const at = (form: Form, z: number): number => {
  const piece = form.find(({ from, to }) => from <= z && z <= to)
  return piece === undefined ? Number.NEGATIVE_INFINITY : depthAt(piece.curve, z)
}
const thou = fc.integer({ min: -300, max: 300 }).map((n) => inch(n / 1000))
const edges = fc.constantFrom(
  square(0.148).pieces,
  round(0.094).pieces,
  corner(0.125).pieces,
  vee(0.05, 38, 0.3).pieces,
)
const anyPiece = fc.oneof(
  fc
    .tuple(thou, thou, thou, fc.integer({ min: 1, max: 200 }))
    .map(([z, d0, d1, w]) => line(z, d0, z + inch(w / 1000), d1)),
  fc.tuple(thou, thou, fc.integer({ min: 20, max: 200 }), fc.constantFrom(1 as const, -1 as const)).map(
    ([zc, dc, r, side]): Piece => ({
      from: zc - inch(r / 1000),
      to: zc + inch(r / 1000),
      curve: { kind: 'arc', zc, dc, r: inch(r / 1000), side },
      step: -1,
    }),
  ),
)
const awayFromEnds = (forms: readonly Form[], z: number): boolean =>
  forms.flat().every(({ from, to }) => Math.abs(z - from) > 1000 && Math.abs(z - to) > 1000)

describe('an envelope', () => {
  it.each([
    ['one by one', envelope],
    ['two and two', (pieces: readonly Piece[]) => envelopeOf(pieces.map((piece) => [piece]))],
  ])('is everywhere as deep as the deepest of its pieces, sorted and abutting: joined %s', (_, joined) => {
    fc.assert(
      fc.property(
        fc.array(anyPiece, { minLength: 1, maxLength: 12 }),
        fc.array(thou, { minLength: 30, maxLength: 30 }),
        (pieces, zs) => {
          const form = joined(pieces)
          for (const [index, piece] of form.entries())
            expect(piece.from).toBeGreaterThanOrEqual(form[index - 1]?.to ?? piece.from)
          for (const z of zs.map((one) => one + 777_777).filter((one) => awayFromEnds([pieces, form], one))) {
            const wanted = deepest(pieces, z)
            if (wanted === Number.NEGATIVE_INFINITY) expect(at(form, z)).toBe(wanted)
            else expect(Math.abs(at(form, z) - wanted)).toBeLessThan(1)
          }
        },
      ),
      { numRuns: 300 },
    )
  })
  it('leaves no sliver: what is too narrow to be work goes to what stands beside it', () => {
    const wide = line(0, -100, inch(1), -100)
    const spans = (form: Form) => form.map(({ from, to }) => [from, to])
    // Just wide enough to be seen, it is a stretch of its own; else nothing is cut.
    const cut = (from: number, to: number) => {
      const part = [wide]
      cutInto(part, [line(from, 0, to, 0)])
      return spans(part)
    }
    expect(cut(500, 511)).toEqual([
      [0, 500],
      [500, 511],
      [511, inch(1)],
    ])
    expect(cut(500, 510)).toEqual([[0, inch(1)]])
    // Ten short of an end: the rest of the old stretch is taken over, on either side.
    expect(cut(10, 5000)).toEqual([
      [0, 5000],
      [5000, inch(1)],
    ])
    expect(cut(11, 5000)).toEqual([
      [0, 11],
      [11, 5000],
      [5000, inch(1)],
    ])
    expect(cut(inch(1) - 5000, inch(1) - 10)).toEqual([
      [0, inch(1) - 5000],
      [inch(1) - 5000, inch(1)],
    ])
    expect(cut(inch(1) - 5000, inch(1) - 11)).toEqual([
      [0, inch(1) - 5000],
      [inch(1) - 5000, inch(1) - 11],
      [inch(1) - 11, inch(1)],
    ])
    // And it is the cut that goes on there, not the uncut.
    const part = [wide]
    cutInto(part, [line(10, 0, 5000, 0)])
    expect(depthAt(part[0]!.curve, 5)).toBe(0)
  })
  it('is cut between the ends of a hollow that is deeper there', () => {
    const part: Piece[] = [
      { from: 0, to: inch(1), step: -1, curve: { kind: 'arc', zc: inch(0.5), dc: 0, r: inch(0.5), side: -1 } },
    ]
    cutInto(part, [line(0, inch(-0.25), inch(1), inch(-0.25))])
    expect([0.001, 0.5, 0.999].map((z) => at(part, inch(z)) / inch(1))).toEqual([
      expect.closeTo(-Math.sqrt(0.25 - 0.499 ** 2), 9),
      -0.25,
      expect.closeTo(-Math.sqrt(0.25 - 0.499 ** 2), 9),
    ])
  })
  it('cut into a part leaves a gap where there was no metal', () => {
    const part: Piece[] = [line(0, 0, inch(1), 0), line(inch(2), 0, inch(3), 0)]
    cutInto(part, [line(0, inch(0.1), inch(3), inch(0.1))])
    expect(part.map(({ from, to }) => [from, to])).toEqual([
      [0, inch(1)],
      [inch(2), inch(3)],
    ])
  })

  it('cut into a part never reaches past the part', () => {
    const part = [line(0, -100, inch(1), -100)]
    cutInto(part, [line(inch(-1), 0, inch(0.5), 0)])
    expect(part.map(({ from, to }) => [from, to])).toEqual([
      [0, inch(0.5)],
      [inch(0.5), inch(1)],
    ])
  })
})

describe('a sweep', () => {
  it('holds every place of the edge on the way, and no more than a fine walk along it', () => {
    fc.assert(
      fc.property(edges, thou, thou, thou, thou, (edge, z0, d0, z1, d1) => {
        const form = swept(
          edge,
          [
            [
              { z: z0, d: d0 },
              { z: z1, d: d1 },
            ],
          ],
          0,
        )
        const walk = Array.from({ length: 201 }, (_, k) => ({
          z: z0 + ((z1 - z0) * k) / 200,
          d: d0 + ((d1 - d0) * k) / 200,
        }))
        const placed = walk.map((place) => swept(edge, [[place, place]], 0))
        for (const one of placed) expect(excess(one, form)?.by ?? 1).toBeLessThan(1000)
        // Two neighbors of the walk are this far apart, so a point of the sweep is no further beyond them.
        const gap = Math.hypot(z1 - z0, d1 - d0) / 200
        const near = grown(envelope(placed.flat()), { along: gap, deep: gap })
        expect(excess(form, near)?.by ?? 1).toBeLessThan(1000)
        expect(form[0]!.from).toBe(Math.min(z0, z1) + edge[0]!.from)
        expect(form.at(-1)!.to).toBe(Math.max(z0, z1) + edge.at(-1)!.to)
      }),
      { numRuns: 60 },
    )
  })
})

describe('comparison', () => {
  it('finds a stretch where one form is on another, also far along a piece that is short of it before', () => {
    // An arc over one inch that dips below a level line from .8 to .9 alone.
    const arc: Piece = {
      from: 0,
      to: inch(1),
      step: -1,
      curve: { kind: 'arc', zc: inch(0.85), dc: inch(-1), r: inch(1), side: 1 },
    }
    const level = (by: number) => [line(0, inch(Math.sqrt(1 - by ** 2) - 1), inch(1), inch(Math.sqrt(1 - by ** 2) - 1))]
    expect(touches([arc], level(0.05))).toBe(true)
    // Where they cross, a nanometer of depth is a hundredth of a thousandth along.
    expect(overlap([arc], level(0.05)) / inch(1)).toBeCloseTo(0.1, 4)
    expect(touches([arc], [line(0, inch(0.001), inch(1), inch(0.001))])).toBe(false)
  })
  it('finds the most one form is beyond another, also between the ends of the pieces', () => {
    const chord = [line(inch(-0.05), 0, inch(0.05), 0)]
    const tip = round(0.094).pieces
    expect(excess(chord, tip)?.by).toBeCloseTo(inch(0.094) - Math.sqrt(inch(0.094) ** 2 - inch(0.05) ** 2), -2)
    expect(excess(tip, chord)).toEqual({ by: 0, z: 0 })
    expect(excess(tip, [line(inch(1), 0, inch(2), 0)])).toBeNull()
    expect(excess([], chord)).toBeNull()
    expect([overlap([], chord), touches([], chord)]).toEqual([0, false])
    // Where both are one, neither is deeper, whatever they are beside it.
    const shared = line(0, 0, inch(1), 0)
    expect(excess([shared, line(inch(1), 0, inch(2), 0)], [shared, line(inch(1), 5000, inch(2), 5000)])).toEqual({
      by: 0,
      z: 0,
    })
    // A nanometer is no difference, what is more is one.
    const level = (d: number) => [line(0, d, inch(1), d)]
    expect([differ(level(0), level(1000)), differ(level(0), level(1001))?.by]).toEqual([null, 1001])
    expect([overlap(level(1000), level(0)), overlap(level(1001), level(0))]).toEqual([0, inch(1)])
  })
  it('names the first of several places where it is that much', () => {
    const flat = [line(0, 0, inch(1), 0)]
    const twice = [
      line(0, -50, inch(0.2), -50),
      line(inch(0.2), -100, inch(0.5), -100),
      line(inch(0.5), -100, inch(1), -100),
    ]
    expect(excess(flat, twice)).toEqual({ by: 100, z: inch(0.2) })
    expect(excess(twice, [line(0, -200, inch(1), -200)])).toEqual({ by: 150, z: 0 })
  })
  it('agrees with asking at many places', () => {
    fc.assert(
      fc.property(anyPiece, anyPiece, (a, b) => {
        const from = Math.max(a.from, b.from)
        const to = Math.min(a.to, b.to)
        fc.pre(to - from > inch(0.001))
        const asked = Array.from({ length: 1001 }, (_, k) => from + ((to - from) * k) / 1000)
        const most = Math.max(...asked.map((z) => depthAt(a.curve, z) - depthAt(b.curve, z)))
        const by = excess([a], [b])?.by ?? Number.NaN
        expect(by).toBeGreaterThan(most - 1)
        expect(by - most).toBeLessThan(inch(0.02))
      }),
    )
  })
  it('lying on is touching, meeting a wall at one z is not', () => {
    const groove = [line(0, 0, inch(1), 0), line(inch(1), inch(-0.1), inch(2), inch(-0.1))]
    expect(touches([line(inch(0.2), 0, inch(0.4), 0)], groove)).toBe(true)
    expect(touches([line(inch(0.5), inch(-0.01), inch(1), inch(-0.01))], groove)).toBe(false)
    expect(touches([line(inch(0.5), inch(-0.01), inch(1.01), inch(-0.01))], groove)).toBe(true)
  })
  it('tells forms apart that agree at all their ends', () => {
    const a = [line(0, 0, inch(0.1), 0)]
    const bowed: Form = [
      {
        from: 0,
        to: inch(0.1),
        step: 0,
        curve: { kind: 'arc', zc: inch(0.05), dc: -inch(0.12), r: inch(0.13), side: 1 },
      },
    ]
    expect(differ(a, bowed)?.by).toBeCloseTo(inch(0.01), -2)
    expect(differ(a, a)).toBeNull()
  })
})

describe('growing and shrinking by a box', () => {
  const box = { along: inch(0.001), deep: inch(0.002) }
  const part = [line(0, 0, inch(1), 0), line(inch(1), inch(0.1), inch(2), inch(0.1)), line(inch(2), 0, inch(3), 0)]
  it('moves walls out and floors down', () => {
    const form = grown(part, box)
    expect(at(form, inch(0.9995))).toBeCloseTo(inch(0.102), -1)
    expect(at(form, inch(0.9985))).toBeCloseTo(inch(0.002), -1)
  })
  it('moves walls in and floors up', () => {
    const form = shrunk(part, box)
    expect(at(form, inch(1.0005))).toBeCloseTo(inch(-0.002), -1)
    expect(at(form, inch(1.0015))).toBeCloseTo(inch(0.098), -1)
  })
})
