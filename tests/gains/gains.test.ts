import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import type { FeaturePlan, Gain } from '../../src/plan/plan.ts'
import { PRINTERS } from '../../src/print/printers.ts'
import { told } from '../prose.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>
type Shop = {
  readonly crossFeed?: string
  readonly compound?: string
  readonly accuracy?: string
  readonly touchOff?: number
  readonly depth?: string
  readonly feature?: string
}

/** One plunge of a tool as wide as the groove, so that a swung compound can be a vernier. */
const job = ({
  crossFeed = '',
  compound = '',
  accuracy = '',
  touchOff = 0.001,
  depth = '0.0725 ±0.0022',
  feature = '',
}: Shop) => `
title: Press collar
units: inch
part: { material: mild steel, held: chuck, diameter: 1.500, length: 4, overhang: 3 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008${crossFeed} }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5${compound} }
  spindle-speeds: [60, 95, 150]
  accuracy: { reading: 0.0005, touch-off: ${touchOff}, runout: 0.0005${accuracy} }
tools:
  ring: { shape: square, width: 0.148, reach: 0.140 }
features:
  - kind: groove
    name: Ring groove
    near: 1.125
    width: 0.148 ±0.004
    depth: ${depth}
    tool: ring${feature === '' ? '' : `\n    ${feature}`}
`

const planOf = (shop: Shop) => {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: job(shop) }))
  expect(diagnostics).toEqual([])
  return plan!
}
const featureOf = (shop: Shop): Planned => {
  const feature = planOf(shop).features[0]!
  if (feature.status !== 'planned') throw new Error(told(feature.reason))
  return feature
}
const depthOf = (feature: Planned) => feature.budget.find(({ id }) => id === 'depth')!
const gainBy = (feature: Planned, change: string): Gain =>
  feature.gains!.find((gain) => gain.change.join(' + ') === change)!

describe('what is proposed where a size may not hold', () => {
  const plain = featureOf({})

  it('is what the same job comes to when it is written so', () => {
    const written: Readonly<Record<string, Shop>> = {
      'compound-angle': { feature: "compound: { angle: 5° 44' }" },
      'read-to cross-feed': { crossFeed: ', read-to: 1/2' },
      'touch-off': { touchOff: 0.0005 },
    }
    expect(depthOf(plain).verdict).toBe('may not hold')
    for (const [change, shop] of Object.entries(written)) {
      const [told] = gainBy(plain, change).sizes
      expect(told).toEqual(depthOf(featureOf(shop)))
      expect(told!.spare!).toBeGreaterThan(depthOf(plain).spare!)
    }
    const careful = told(planOf({}).warnings[0]!.remedy)
    expect(careful).toContain("compound: { angle: 5° 44' } in the feature: depth .0703 to .0747 in tolerance")
  })

  it('says the angle as the scale of this lathe shows it', () => {
    const [square] = gainBy(featureOf({ compound: ', scale-zero: square' }), 'compound-angle').say
    expect(told(square)).toBe("the compound is set to 84° 16' on its scale, 5° 44' from parallel")
    expect(gainBy(plain, 'compound-angle').say.map((one) => told(one))).toEqual([
      "the compound is set to 5° 44' on its scale",
    ])
  })

  it('is all that gains together where nothing does alone, replayed together', () => {
    const shop = { depth: '0.0725 ±0.0012' }
    const feature = featureOf(shop)
    expect(feature.gains!.slice(0, -1).every(({ holds }) => !holds)).toBe(true)
    const all = feature.gains!.at(-1)!
    // The bottom is measured at the stop: how surely the work was touched gains nothing more.
    expect(all.change).toEqual(['compound-angle', 'read-to cross-feed'])
    const written = featureOf({
      ...shop,
      feature: "compound: { angle: 5° 44' }",
      crossFeed: ', read-to: 1/2',
    })
    expect(all.sizes).toEqual([depthOf(written)])
  })

  it('leaves out what gains nothing, and what is done already', () => {
    const depthOnly = plain.gains!.flatMap(({ change }) => change)
    expect(depthOnly).not.toContain('read-to compound')
    expect(depthOnly).not.toContain('layout')
    const read = featureOf({ crossFeed: ', read-to: 1/2', accuracy: ', layout: 0.001', depth: '0.07225 ±0.001' })
    expect(read.gains!.flatMap(({ change }) => change)).not.toContain('read-to cross-feed')
    const even = featureOf({ depth: '0.0720 ±0.0018' })
    expect(even.gains!.flatMap(({ change }) => change)).not.toContain('compound-angle')
    expect(even.gains!.flatMap(({ change }) => change)).toContain('touch-off')
  })

  it('is nothing where all holds', () => {
    const plan = planOf({ depth: '0.072 ±0.004' })
    expect(plan.warnings).toEqual([])
    expect(plan.features[0]).not.toHaveProperty('gains')
  })

  it('stands at the limits in the job, and on the sheet in every form', () => {
    const plan = planOf({})
    expect(plan.warnings).toMatchObject([{ code: 'may-not-hold', origin: { path: ['features', 0, 'depth'] } }])
    expect(planOf({ depth: '0.0725 ±0.0009' }).warnings).toMatchObject([{ code: 'finer-than-dial' }])
    const sheet = sheetFor(plan)
    expect(PRINTERS.text(sheet)).toMatch(
      /In tol\. if {2}the compound is set to 5° 44' on its scale: depth \.0703 to \.0747/,
    )
    const [feature] = JSON.parse(PRINTERS.json(sheet)).features
    expect(feature.gains[0]).toMatchObject({ change: ['compound-angle'], holds: true })
    expect(feature.gains[0].finished.depth.low).toBeCloseTo(0.07036, 5)
    expect(feature.finished.depth.verdict).toBe('may not hold')
  })
})

describe('a feature refused because no mark lies within its limits', () => {
  it('is told what was tried and is planned then, and nothing else', () => {
    const shop = { depth: '0.0703 to 0.0707' }
    const refused = planOf(shop).features[0]!
    expect(refused).toMatchObject({ status: 'refused', code: 'no-reading' })
    const remedy = refused.status === 'refused' ? told(refused.remedy) : ''
    expect(remedy).toContain("compound: { angle: 5° 44' } in the feature, or read-to: 1/2 in cross-feed")
    expect(remedy).not.toContain('touch-off')
    expect(featureOf({ ...shop, crossFeed: ', read-to: 1/2' }).operation.angle).toBe(0)
    expect(featureOf({ ...shop, feature: "compound: { angle: 5° 44' }" }).operation.angle).toBeCloseTo(5 + 44 / 60)
  })
  it('keeps its advice where nothing tried is planned', () => {
    const refused = planOf({ depth: '0.07026 to 0.07034', compound: ', angle: 30' }).features[0]!
    expect(refused.status === 'refused' && told(refused.remedy)).toMatch(/^a dial with finer marks/)
  })
})
