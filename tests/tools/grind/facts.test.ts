import { describe, expect, it } from 'vitest'
import { nearestGauge } from '../../../src/handbook/grinding.ts'
import { grindFacts } from '../../../src/tools/grind/facts.ts'
import type { SquareTool, VeeTool } from '../../../src/tools/tool.ts'
import { INCH, MM } from '../../../src/units/length.ts'

const base = {
  name: 'neck',
  reach: 0.2 * INCH,
  blank: null,
  edgeOffset: null,
  bit: 'hss' as const,
  holderAngle: 0,
  rakeInUse: 0,
  measured: true,
  origin: { file: 'toolbox.yaml', path: [] },
}
const square = (width: number): SquareTool => ({
  ...base,
  shape: 'square',
  width: { nominal: width * INCH, limits: null, aim: width * INCH, text: String(width) },
  cornerRadius: 0,
})
const form = {
  feature: 'Neck',
  units: 'inch' as const,
  work: 'one-off' as const,
  material: 'mild steel',
  surface: 1.5 * INCH,
  depth: 0.1 * INCH,
  width: 0.25 * INCH,
  aimedWidth: 0.25 * INCH,
  severalPlaces: false,
  shoulder: 0,
  half: null,
  radius: null,
}

describe('the blank to start from', () => {
  it.each([
    [0.125, 0.25],
    [0.25, 0.25],
    [0.251, 0.3125],
    [0.9, 1],
  ])('%f wide: %f square', (width, stock) => {
    expect(grindFacts(square(width), form).blank!.square / INCH).toBeCloseTo(stock, 9)
  })

  it('is none where no stock square is as wide', () => {
    expect(grindFacts(square(1.01), form).blank).toBeNull()
  })

  it('carries a V as wide as its flanks are ground back', () => {
    const vee: VeeTool = { ...base, shape: 'vee', angle: 90, angleWithin: null, nose: 0, holderAngle: 0 }
    // 2 × (0.1 + 1/16) wide, past 5/16.
    expect(grindFacts(vee, { ...form, half: 45 }).blank!.square / INCH).toBeCloseTo(0.375, 9)
  })
})

it('relieves the sides from 1/16 to 1/8 past the depth', () => {
  const { sidesReach } = grindFacts(square(0.125), form).form
  expect(sidesReach.map((length) => length / INCH)).toEqual([expect.closeTo(0.1625, 9), expect.closeTo(0.225, 9)])
})

it('reaches past a shoulder close by as well', () => {
  const { sidesReach, face } = grindFacts(square(0.125), { ...form, shoulder: 0.2 * INCH }).form
  expect(sidesReach.map((length) => length / INCH)).toEqual([expect.closeTo(0.3625, 9), expect.closeTo(0.425, 9)])
  expect(face / INCH).toBeCloseTo(0.1, 9)
})

describe('the nearest radius gauge', () => {
  it.each([
    [0.125, '1/8'],
    [0.2438, '1/4'],
    [0.101, '.100'],
    [0.401, '.400'],
    [0.002, '1/64'],
    [0.7, '1/2'],
  ])('%f in: %s', (radius, label) => expect(nearestGauge(radius * INCH, 'inch').label).toBe(label))
  it.each([
    [0.4, '1 mm'],
    [2.3, '2.5 mm'],
    [30, '25 mm'],
  ])('%f mm: %s', (radius, label) => expect(nearestGauge(radius * MM, 'mm').label).toBe(label))

  it('has the 25 leaves of the fractional set, and only what the page gives of the decimal one', () => {
    const leaves = new Set(Array.from({ length: 2001 }, (_, i) => nearestGauge((i / 4000) * INCH, 'inch').label))
    expect([...leaves].filter((label) => label.includes('/'))).toHaveLength(25)
    expect([...leaves].filter((label) => label.startsWith('.'))).toHaveLength(10)
  })
})
