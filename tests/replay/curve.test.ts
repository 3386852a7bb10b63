import { describe, expect, it } from 'vitest'
import type { Curve } from '../../src/moves/form.ts'
import { sameCurve } from '../../src/replay/form/curve.ts'

const line: Curve = { kind: 'line', z0: 1, d0: 2, z1: 3, d1: 4 }
const arc: Curve = { kind: 'arc', zc: 1, dc: 2, r: 3, side: 1 }

describe('curves are the same where every figure of them is', () => {
  it('and only there', () => {
    expect(sameCurve(line, { ...line })).toBe(true)
    expect(sameCurve(arc, { ...arc })).toBe(true)
    expect(sameCurve(line, arc)).toBe(false)
    expect(sameCurve(arc, line)).toBe(false)
  })
  it.each(['z0', 'd0', 'z1', 'd1'])('a line differs by its %s', (key) => {
    expect(sameCurve(line, { ...line, [key]: 9 })).toBe(false)
  })
  it.each([
    ['zc', 9],
    ['dc', 9],
    ['r', 9],
    ['side', -1],
  ])('an arc differs by its %s', (key, value) => {
    expect(sameCurve(arc, { ...arc, [key]: value } as Curve)).toBe(false)
  })
})
