import { describe, expect, it } from 'vitest'
import { benchOf, setupOf } from '../../src/job/lower.ts'
import { readJob } from '../../src/job/read-job.ts'
import type { Scale } from '../../src/lathe/lathe.ts'
import type { Edge } from '../../src/moves/form.ts'
import { operationsOf, planFeatures } from '../../src/planning/features.ts'
import { setUp } from '../../src/replay/bench.ts'
import { ridgesAllowed } from '../../src/replay/marks-ridge.ts'
import type { Length } from '../../src/units/length.ts'
import { stepped } from './operations.ts'
import { bar, bench, inch, line, square, toInch } from './shop.ts'

/** A hollow of radius .125, .060 deep, in a bar of 1.500 about 1.500 from its end: what its marks leave, where that is more than the job allows. */
const setup = bar([1.5, 4])
const before = { surely: setup.stock, possibly: setup.stock, allowed: setup.stock }
const readout = (resolution: Length): Scale => ({ kind: 'readout', units: 'inch', resolution, reads: 'depth' })
const allowed = (edge: Edge, along: Length, inward: Length): Length => {
  const lathe = { ...bench, crossFeed: readout(inward), compound: { ...bench.compound, scale: readout(along) } }
  const operation = { ...stepped, edge, cusp: { most: 1, given: true } }
  const [ridge] = ridgesAllowed(setUp(lathe, setup, operation, before, { rules: false, shift: null }), [inch(1)])
  // A hundredth more is arithmetic.
  return ridge! / 1.01
}
const sharp: Edge = { ...square(0.002), pieces: [line(inch(-0.001), 0, 0, 0), line(0, 0, inch(0.001), 0)] }
/** A sharp corner that is stepped down a slope leaves a stair, square to it as high as its tread times the sine; at the edge of this hollow the sine is this. */
const sine = Math.sqrt(0.125 ** 2 - 0.065 ** 2) / 0.125

describe('what the marks of two dials leave', () => {
  it('of a sharp edge is the stair of its marks', () => {
    expect(allowed(sharp, inch(0.0005), 1000) / (inch(0.0005) * sine)).toBeCloseTo(1, 1)
  })
  it('with very fine marks is that of every sixth: to more than 5000 places nobody goes', () => {
    // The hollow of .216 and the edge of .002 have 25 002 marks; the hollow alone has less than 25 000.
    const mark = inch(0.218) / 25_002
    expect(allowed(sharp, mark, 1000) / (6 * mark * sine)).toBeCloseTo(1, 1)
  })
  it('is never less than what the other dial leaves at the bottom, however fine the marks along the work', () => {
    // Of .060 a dial of .0035 shows .0595.
    for (const along of [0.0005, 0.00001])
      expect(toInch(allowed(stepped.edge, inch(along), inch(0.0035)))).toBeCloseTo(0.0005, 5)
  })
})

it('finer marks along the work refuse no form that coarser ones cut', () => {
  const planned = (resolution: number) => {
    const bytes = `
title: Cord groove
units: mm
part: { material: mild steel, held: chuck, diameter: 40, length: 80, overhang: 50 }
lathe:
  name: Lathe with an indicator on its compound
  cross-feed: { graduation: 0.05, per-turn: 4, reads: depth, backlash: 0.1 }
  compound: { readout: ${resolution}, travel: 80 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  rnd: { shape: round, radius: 2, reach: 8 }
features:
  - { kind: radius, shape: concave, center: 25, radius: 6, depth: 2.02, tool: rnd, cusp: 0.01 }
`
    const { job } = readJob('-', () => ({ ok: true, file: '-', bytes }))
    const shop = benchOf(job!)
    return operationsOf(planFeatures(job!, shop, setupOf(shop))).length
  }
  // The bottom is .020 off the marks of the cross-feed, twice the cusp.
  expect(planned(0.005)).toBe(1)
  expect(planned(0.001)).toBe(1)
})
