import { describe, expect, it } from 'vitest'
import { tilted } from '../../src/budget/tilted.ts'
import { worn } from '../../src/budget/worn.ts'
import type { Edge, Piece } from '../../src/moves/form.ts'
import { excess } from '../../src/replay/form/compare.ts'
import { depthAt } from '../../src/replay/form/curve.ts'
import { corner, inch, line, round, square, toInch, vee } from '../replay/shop.ts'

const arc = (from: number, to: number, zc: number, dc: number, r: number, side: 1 | -1): Piece => ({
  from: inch(from),
  to: inch(to),
  curve: { kind: 'arc', zc: inch(zc), dc: inch(dc), r: inch(r), side },
  step: -1,
})
/** A square end .1 wide with corners of .02 and a flat between. */
const blunt = (width: number): Edge => ({
  ...square(width),
  pieces: [
    arc(0, 0.02, 0.02, -0.02, 0.02, 1),
    line(inch(0.02), 0, inch(width - 0.02), 0),
    arc(width - 0.02, width, width - 0.02, -0.02, 0.02, 1),
  ],
})
const same = (edge: Edge, other: Edge) => {
  expect(edge.pieces.length).toBe(other.pieces.length)
  edge.pieces.forEach((piece, i) => {
    const like = other.pieces[i]!
    expect([toInch(piece.from), toInch(piece.to)]).toEqual([
      expect.closeTo(toInch(like.from), 9),
      expect.closeTo(toInch(like.to), 9),
    ])
    for (const share of [0.1, 0.5, 0.9]) {
      const z = piece.from + share * (piece.to - piece.from)
      expect(toInch(depthAt(piece.curve, z))).toBeCloseTo(toInch(depthAt(like.curve, z)), 6)
    }
  })
}

describe('an edge that was measured wrong', () => {
  it('with round corners is wider by its flat, and the far corner moves over as it was', () => {
    same(worn(blunt(0.1), inch(0.002)), blunt(0.102))
    same(worn(blunt(0.1), inch(-0.002)), blunt(0.098))
  })
  it('twice is wider by both: what was measured at the stop may be measured wrong again', () => {
    same(worn(worn(blunt(0.1), inch(0.002)), inch(0.001)), blunt(0.103))
    same(worn(worn(square(0.1), inch(0.002)), inch(-0.001)), square(0.101))
  })
  it('with a round end whole to both sides is the larger circle through the same tip', () => {
    same(worn(round(0.1), inch(0.002)), round(0.102))
    same(worn(round(0.1), inch(-0.002)), round(0.098))
  })
  it('with a round end ground less wide than round keeps its sides', () => {
    const part: Edge = { ...round(0.1), pieces: [arc(-0.06, 0.06, 0, -0.1, 0.1, 1)] }
    same(worn(part, inch(0.002)), { ...part, pieces: [arc(-0.06, 0.06, 0, -0.102, 0.102, 1)] })
  })
  it('hollow is the larger quarter in the same corner', () => {
    same(worn(corner(0.1), inch(0.002)), corner(0.102))
  })
  it('with a V keeps its near flank, and the far one moves over', () => {
    const [wide, plain] = [worn(vee(0.05, 38, 0.2), inch(0.002)).pieces, vee(0.05, 38, 0.2).pieces]
    expect(wide[0]).toEqual(plain[0])
    expect(toInch(wide[2]!.to - plain[2]!.to)).toBeCloseTo(0.002, 9)
    expect(toInch(depthAt(wide[2]!.curve, plain[2]!.to + inch(0.002)))).toBeCloseTo(-0.2, 9)
  })
  it('with a sharp V stays as it is: there is nothing to measure wrong but its angle', () => {
    const sharp: Edge = {
      ...square(0),
      pieces: [line(inch(-0.1), inch(-0.2), 0, 0), line(0, 0, inch(0.1), inch(-0.2))],
    }
    expect(worn(sharp, inch(0.002)).pieces).toEqual(sharp.pieces)
  })
  it('ground to another radius on a sloping face is as much larger in all', () => {
    const ground: Edge = {
      ...round(0.1),
      ground: inch(0.1),
      pieces: [line(inch(-0.1), inch(-0.06), inch(-0.05), inch(-0.02)), arc(-0.05, 0.05, 0, -0.08, 0.08, 1)],
    }
    const larger = worn(ground, inch(0.005))
    same(larger, {
      ...ground,
      pieces: [
        line(inch(-0.105), inch(-0.063), inch(-0.0525), inch(-0.021)),
        arc(-0.0525, 0.0525, 0, -0.084, 0.084, 1),
      ],
    })
    const exact: Edge = { ...ground, ground: null }
    expect(worn(exact, inch(0.005))).toBe(exact)
  })
})

describe('an edge whose angle was measured wrong', () => {
  it('is the V of that angle about its nose', () => {
    const by = 1
    const wide = tilted(vee(0.05, 38, 0.2), by)
    same(wide, vee(0.05, 39, 0.2))
    same(tilted(vee(0.05, 38, 0.2), -by), vee(0.05, 37, 0.2))
    expect(excess(wide.pieces, vee(0.05, 38, 0.2).pieces)!.by).toBeGreaterThan(0)
  })
  it('keeps its nose where that was measured wrong too', () => {
    const nose = ({ pieces }: Edge) => toInch(pieces[1]!.to - pieces[1]!.from)
    for (const by of [1, -1]) expect(nose(tilted(worn(vee(0.05, 38, 0.2), inch(0.002)), by))).toBeCloseTo(0.052, 9)
  })
})
