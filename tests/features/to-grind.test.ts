import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import type { FeaturePlan } from '../../src/plan/plan.ts'
import { toInch } from '../replay/shop.ts'

const planned = (feature: string, more = ''): Extract<FeaturePlan, { status: 'planned' }> => {
  const text = `title: Pawl pin of the cider press
units: inch
${more}part: { material: mild steel, held: chuck, overhang: 3, diameter: 1.5, length: 5 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
features:
  - { kind: groove, name: Oil groove, near: 1, depth: 0.050, ${feature} }
`
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
  expect(diagnostics).toEqual([])
  const one = plan!.features[0]!
  if (one.status !== 'planned') throw new Error(one.code)
  return one
}

describe('a square tool that is still to be ground', () => {
  const widthOf = (feature: string, more = '') => toInch(planned(feature, more).edge.width)
  it('for one part is .004 under the groove, in a narrow one a tenth of it', () => {
    expect(widthOf('width: 0.125')).toBeCloseTo(0.121, 9)
    expect(widthOf('width: 0.040')).toBeCloseTo(0.036, 9)
    expect(widthOf('width: 0.030')).toBeCloseTo(0.027, 9)
  })
  it('for many parts is as wide as the groove', () => {
    expect(widthOf('width: 0.125', 'work: repeat\n')).toBeCloseTo(0.125, 9)
  })
  it('is never asked for wider than 3/16, but where its corners take three times their radius', () => {
    expect(widthOf('width: 0.375')).toBeCloseTo(0.1875, 9)
    expect(widthOf('width: 0.375, corner-radius: 0.045')).toBeCloseTo(0.1875, 9)
  })
  it('has the corners of the drawing, and sharp ones where it says only how round they may be', () => {
    expect(planned('width: 0.125, corner-radius: 0.010').operation.edge.pieces).toHaveLength(3)
    expect(planned('width: 0.125, corner-radius: 0.010 max').operation.edge.pieces).toHaveLength(1)
  })
  it('reaches 1/16 past the depth', () => {
    expect(toInch(planned('width: 0.125').edge.reach)).toBeCloseTo(0.1125, 9)
  })
})
