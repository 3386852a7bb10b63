import { describe, expect, it } from 'vitest'
import { worn } from '../../src/budget/worn.ts'
import type { Form } from '../../src/moves/form.ts'
import { rakedCorner } from '../../src/tools/corner/edge.ts'
import { FITTED_WITHIN } from '../../src/tools/raked.ts'
import { rakedRound } from '../../src/tools/round/edge.ts'
import { rakedSquare } from '../../src/tools/square/edge.ts'
import { rakedVee } from '../../src/tools/vee/edge.ts'
import { INCH } from '../../src/units/length.ts'
import { add, bisect, distanceToAxis, scaled, turned, type Vector } from './grind/vectors.ts'

const RAKES = [-8, 2, 14.5, 16.5, 30]
const FLOORS = [0.2, 0.5625, 3].map((inches) => inches * INCH)
const stances = RAKES.flatMap((rake) => FLOORS.map((floor) => ({ rake, floor })))

/** Where a point of the face stands in the work, by turning the face about the axis of the work through its tip: along, and the tip's distance from the axis less its own. */
const standing = (along: number, back: number, { rake, floor }: { rake: number; floor: number }): Vector => {
  const point = add([0, floor, 0], turned([along, back, 0], -rake))
  return [point[0], floor - Math.hypot(point[1], point[2]), 0]
}

/** Distance of a point from a form: from its circles and lines themselves, over the stretches where they stand. */
const off = (form: Form, [u, e]: Vector): number =>
  Math.min(
    ...form
      .filter(({ from, to }) => u >= from - 1 && u <= to + 1)
      .map(({ curve }) =>
        curve.kind === 'arc'
          ? (e - curve.dc) * curve.side >= -1
            ? Math.abs(Math.hypot(u - curve.zc, e - curve.dc) - curve.r)
            : Number.POSITIVE_INFINITY
          : Math.abs((curve.z1 - curve.z0) * (e - curve.d0) - (curve.d1 - curve.d0) * (u - curve.z0)) /
            Math.hypot(curve.z1 - curve.z0, curve.d1 - curve.d0),
      ),
  )

const worst = (form: Form, points: readonly Vector[]): number => Math.max(...points.map((point) => off(form, point)))
const parts = Array.from({ length: 401 }, (_, i) => i / 400)
const half = 18.55
const t = Math.tan((half * Math.PI) / 180)

describe.each(stances)('an edge with a rake of $rake, the bottom at $floor from the axis', (stance) => {
  it('of a V strays less than stated from the face turned into the work', () => {
    const reach = 0.26 * INCH
    const form = rakedVee(0.03 * INCH, half, reach, stance)
    const near = parts.map((part) => standing(-part * reach * t, part * reach, stance))
    const far = parts.map((part) => standing(0.03 * INCH + part * reach * t, part * reach, stance))
    expect(worst(form, [...near, ...far])).toBeLessThan(FITTED_WITHIN)
    expect(form.length).toBeLessThan(30)
  })

  it.each([0.03, 0.09375, 0.25])('of a round end of %f in likewise, and of its corners and hollows', (inches) => {
    const r = inches * INCH
    const circle = (from: number, to: number) =>
      parts.map((part) => {
        const turn = from + (to - from) * part
        return standing(r * Math.sin(turn), r - r * Math.cos(turn), stance)
      })
    const round = rakedRound(r, r, stance)
    expect(worst(round, circle(-Math.PI / 2, Math.PI / 2))).toBeLessThan(FITTED_WITHIN)
    expect(worst(rakedRound(r, 0.6 * r, stance), circle(-0.64, 0.64))).toBeLessThan(FITTED_WITHIN)
    const square = rakedSquare(4 * r, r, stance)
    const corner = circle(0, Math.PI / 2)
    expect(
      worst(
        square,
        corner.map((point) => add(point, [3 * r, 0, 0])),
      ),
    ).toBeLessThan(FITTED_WITHIN)
    expect(
      worst(
        square,
        corner.map(([u, e]): Vector => [r - u, e, 0]),
      ),
    ).toBeLessThan(FITTED_WITHIN)
    const down = distanceToAxis(stance.floor, r, stance.rake) - stance.floor
    const hollow = parts.map((part) => {
      const turn = (part * Math.PI) / 2
      return add(standing(r - r * Math.cos(turn), r * Math.sin(turn), stance), [0, down, 0])
    })
    expect(worst(rakedCorner(r, r, stance), hollow)).toBeLessThan(FITTED_WITHIN)
    expect(round.length).toBeLessThan(60)
  })

  it('has its pieces one after another, without steps between them, none deeper than the tip', () => {
    const r = 0.125 * INCH
    for (const form of [rakedVee(0, half, r, stance), rakedRound(r, r, stance), rakedSquare(3 * r, r / 8, stance)]) {
      for (const [i, piece] of form.entries()) {
        const before = form[i - 1]
        if (before !== undefined) expect(Math.abs(before.to - piece.from)).toBeLessThan(1)
        if (before !== undefined)
          expect(Math.abs(depthOf(before, before.to) - depthOf(piece, piece.from))).toBeLessThan(100)
        for (const part of parts) expect(depthOf(piece, piece.from + part * (piece.to - piece.from))).toBeLessThan(1)
      }
    }
  })
})

const depthOf = ({ curve }: Form[number], u: number): number =>
  curve.kind === 'arc'
    ? curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (u - curve.zc) ** 2))
    : curve.d0 + ((curve.d1 - curve.d0) * (u - curve.z0)) / (curve.z1 - curve.z0)

describe('a face turned into the work', () => {
  it('meets the surface where the grinding sheet says, solved without its formula', () => {
    const stance = { rake: 14.5, floor: 0.5625 * INCH }
    const face = bisect((back) => 0.1875 * INCH + standing(0, back, stance)[1] * -1 - 0.375 * INCH, 0, INCH)
    expect(scaled([face, 0, 0], 1 / INCH)[0]).toBeCloseTo(0.1922, 3)
  })
})

describe('an edge on a sloping face that was measured wrong', () => {
  const stance = { rake: 14.5, floor: 0.5625 * INCH }
  const [r, by] = [0.125 * INCH, 0.0005 * INCH]
  const edge = (pieces: Form, ground: number | null) => ({ pieces, ground, reach: INCH, shank: { from: 0, to: 0 } })
  const rim = (form: Form, parts = 200): Vector[] =>
    Array.from({ length: parts + 1 }, (_, i): Vector => {
      const u = form[0]!.from + ((form.at(-1)!.to - form[0]!.from) * i) / parts
      return [u, depthOf(form.find(({ to }) => u <= to) ?? form.at(-1)!, u), 0]
    })

  it('is round to another radius, or hollow to another, but for what the work is rounder: a tenth of a micrometer', () => {
    const round = worn(edge(rakedRound(r, r, stance), r), by).pieces
    expect(worst(rakedRound(r + by, r + by, stance), rim(round).slice(1, -1))).toBeLessThan(100_000)
    const hollow = worn(edge(rakedCorner(r, r, stance), r), by).pieces
    expect(worst(rakedCorner(r + by, r + by, stance), rim(hollow).slice(1, -1))).toBeLessThan(100_000)
  })

  it('is a V with another nose and the same flanks, or a keen point as it was', () => {
    const vee = worn(edge(rakedVee(0.03 * INCH, half, r, stance), null), by).pieces
    expect(worst(rakedVee(0.03 * INCH + by, half, r, stance), rim(vee))).toBeLessThan(100)
    const keen = rakedVee(0, half, r, stance)
    expect(worn(edge(keen, null), by).pieces).toBe(keen)
  })
})
