import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printJson } from '../../src/print/json/print.ts'
import { INCH } from '../../src/units/length.ts'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'

type Asked = { readonly depth: string; readonly angle: string; readonly graduation?: number; readonly rest?: string }

/** One groove as wide as its tool, on a lathe whose cross-feed has coarse marks. */
const job = ({
  depth,
  angle,
  graduation = 0.005,
  rest = 'near: 1.125, width: 0.156',
}: Asked): string => `title: Gauge ring of the cider press
units: inch
part: { material: mild steel, held: chuck, overhang: 3, steps: [{ name: pilot, diameter: 1.5, length: 2 }, { name: body, diameter: 1.6, length: 2 }] }
lathe:
  name: Old lathe
  units: inch
  cross-feed: { graduation: ${graduation}, per-turn: 0.100, reads: depth, backlash: 0.010 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150]
tools: { neck: { shape: square, width: 0.156, reach: 0.300 } }
features:
  - { kind: groove, name: Ring groove, ${rest}, depth: ${depth}, tool: neck, compound: { angle: ${angle} } }
`
const planned = (asked: Asked) => {
  const { plan, diagnostics } = compile('job.yaml', (file) => ({ ok: true, file, bytes: job(asked) }))
  if (plan === null) throw new Error(diagnostics.map(({ message }) => message).join('; '))
  const feature = plan.features[0]!
  if (feature.status !== 'planned') throw new Error(`${feature.reason}; ${feature.remedy}`)
  const depth = feature.budget.find(({ id }) => id === 'depth')!
  return { plan, feature, depth, fine: Math.abs(feature.trace.zero.diameter - feature.operation.surface) > 1 }
}

describe('the compound as a fine dial', () => {
  it('cuts what no mark of the cross-feed cuts, and holds what it could not hold', () => {
    const coarse = planned({ depth: '0.0720 ±0.0050', angle: '0' })
    const fine = planned({ depth: '0.0720 ±0.0050', angle: "5° 44'" })
    expect([coarse.fine, fine.fine]).toEqual([false, true])
    expect(coarse.depth.planned / INCH).toBeCloseTo(0.07, 9)
    expect(fine.depth.planned / INCH).toBeCloseTo(0.072, 5)
    expect([coarse.depth.verdict, fine.depth.verdict]).toEqual(['may not hold', 'holds'])
    expect(fine.depth.spare! - coarse.depth.spare!).toBeGreaterThan(0.0017 * INCH)
  })

  it.each([
    ['2.9', false],
    ['3', true],
    ['10', true],
    ['10.5', false],
  ])('is one at an angle of %s: %s', (angle, fine) => {
    expect(planned({ depth: '0.0720 ±0.0050', angle }).fine).toBe(fine)
  })

  it('leaves the groove in its place: it meets its line with the compound at 0', () => {
    const { feature } = planned({ depth: '0.0720', angle: "5° 44'" })
    const near = feature.budget.find(({ id }) => id === 'near')!
    expect(near.planned / INCH).toBeCloseTo(1.125, 9)
    expect(near.high - near.low).toBeLessThan(0.0115 * INCH)
    expect(feature.operation.moves.flatMap(({ slide, count }) => (slide === 'compound' ? [count] : []))).toEqual([
      null,
      0,
      -30,
      -20,
      0,
    ])
    expect(feature.notes.join()).toContain('The compound is a fine dial here')
  })

  it('comes within half a fine mark of any depth, proven by both replays', () => {
    const drawn = fc.record({
      depth: fc.integer({ min: 200, max: 2000 }),
      tenths: fc.integer({ min: 30, max: 100 }),
      graduation: fc.constantFrom(0.001, 0.002, 0.005),
    })
    fc.assert(
      fc.property(drawn, ({ depth, tenths, graduation }) => {
        const asked = { depth: (depth / 10_000).toFixed(4), angle: (tenths / 10).toFixed(1), graduation }
        const { plan, depth: size } = planned(asked)
        const worth = 0.001 * Math.sin((tenths * Math.PI) / 1800)
        expect(Math.abs(size.planned / INCH - depth / 10_000)).toBeLessThanOrEqual(worth / 2 + 1e-9)
        const brute = bruteForce(JSON.parse(printJson(sheetFor(plan))) as Sheet)
        expect(brute.problems).toEqual([])
        for (const run of brute.features[0]!.runs) expect(run.depth).toBeCloseTo(size.planned / INCH, 7)
      }),
      { numRuns: 25, seed: 1904 },
    )
  })

  it.each([
    ['nearly parallel', { angle: '2.9' }],
    ['as for threading', { angle: '30' }],
    ['out of the work', { angle: '-6' }],
    ['for a groove of two places', { angle: '6', rest: 'near: 1.125, width: 0.200' }],
    ['where the mark is right', { angle: '6', depth: '0.070' }],
  ])('is not used %s', (_, asked) => {
    expect(planned({ depth: '0.072', ...asked }).fine).toBe(false)
  })
})
