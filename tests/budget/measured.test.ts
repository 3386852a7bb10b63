import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { finishedAt } from '../../src/finish/measured.ts'
import { deeperOnPaper } from '../../src/finish/paper.ts'
import { readsOf } from '../../src/finish/reads.ts'
import { stopOf } from '../../src/finish/stop.ts'
import { correctionTable } from '../../src/finish/table.ts'
import type { FeaturePlan, Plan } from '../../src/plan/plan.ts'
import { printText } from '../../src/print/text/print.ts'
import { INCH } from '../../src/units/length.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

const planOf = (text: string): Plan => {
  const { plan, diagnostics } = compile('job.yaml', (path) => ({
    ok: true,
    file: path,
    bytes: path === 'job.yaml' ? Buffer.from(text) : readFileSync(`examples/jobs/${path}`),
  }))
  if (plan === null) throw new Error(JSON.stringify(diagnostics))
  return plan
}
const first = (plan: Plan): Planned => {
  const [feature] = plan.features
  if (feature?.status !== 'planned') throw new Error('refused')
  return feature
}

type Facts = { accuracy?: string; instruments?: string; width?: string; bottom?: string }
const job = ({ accuracy = '', instruments = '', width = '0.160 ±0.006', bottom = '0.880 ±0.012' }: Facts): string =>
  [
    'title: What the stop buys',
    'units: inch',
    'part: { material: mild steel, diameter: 1, length: 3, overhang: 2, measured-diameter: 1 }',
    'lathe:',
    '  name: Bench lathe',
    '  cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.008 }',
    '  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.006 }',
    '  spindle-speeds: [60, 150, 380]',
    `  accuracy: { reading: 0.0005, touch-off: 0.001, tool: 0.0005, stock: 0.0005, runout: 0.0005${accuracy} }`,
    `  instruments: { ${instruments} }`,
    'tools: { neck: { shape: square, width: 0.150, reach: 0.2 } }',
    `features: [{ kind: groove, near: 0.5, width: ${width}, bottom-diameter: ${bottom}, tool: neck }]`,
  ].join('\n')

const range = (facts: Facts, id: string): { cut: number; measured: number; better: boolean } => {
  const one = first(planOf(job(facts))).budget.find((each) => each.id === id)!
  const { low, high, better } = one.measured!
  return { cut: (one.high - one.low) / 2 / INCH, measured: (high - low) / 2 / INCH, better }
}

describe('measured and corrected at the stop', () => {
  // Plane sums: of the bottom as a depth, half of what the instrument is off on the diameter, half a mark that the correction is rounded to, and two
  // readings of the cross-feed, at the stop and at the finish.
  it('a depth has the instrument in place of touch, runout and stock', () => {
    const fine = range({ instruments: 'blade-micrometer: 0.0005' }, 'depth')
    expect(fine.cut).toBeCloseTo(0.001 + 0.0005 + 0.0005, 5)
    expect(fine.measured).toBeCloseTo(0.0005 / 2 + 0.0005 + 0.0005 + 0.0005, 5)
    expect(fine.better).toBe(true)
    const surer = range({ instruments: 'blade-micrometer: 0.0001' }, 'depth')
    expect(surer.measured).toBeCloseTo(0.0001 / 2 + 0.0015, 5)
  })

  it('is the same however badly the work was touched, and no better where it was touched well', () => {
    const { cut, measured } = range({ accuracy: ', layout: 0.004' }, 'depth')
    const bad = planOf(job({}).replace('touch-off: 0.001', 'touch-off: 0.003'))
    const one = first(bad).budget.find(({ id }) => id === 'depth')!
    expect((one.high - one.low) / 2 / INCH).toBeCloseTo(cut + 0.002, 5)
    expect((one.measured!.high - one.measured!.low) / 2 / INCH).toBeCloseTo(measured, 5)
    const well = planOf(job({}).replace('touch-off: 0.001, ', 'touch-off: 0.0001, '))
    expect(first(well).budget.find(({ id }) => id === 'depth')!.measured!.better).toBe(false)
  })

  it('a width has the gauge blocks in place of the tool', () => {
    const usual = range({}, 'width')
    const worn = planOf(job({}).replace('tool: 0.0005', 'tool: 0.002'))
    const one = first(worn).budget.find(({ id }) => id === 'width')!
    expect((one.high - one.low) / 2 / INCH).toBeCloseTo(usual.cut + 0.0015, 5)
    expect((one.measured!.high - one.measured!.low) / 2 / INCH).toBeCloseTo(usual.measured, 5)
    expect(one.measured!.better).toBe(true)
  })

  it('is what the verdict counts, and the sheet says so', () => {
    const text = (facts: Facts) => {
      const plan = planOf(job(facts).replace('touch-off: 0.001', 'touch-off: 0.004'))
      return { plan, out: printText(sheetFor(plan)) }
    }
    const { plan, out } = text({ bottom: '0.880 ±0.006' })
    const one = first(plan).budget.find(({ id }) => id === 'bottomDiameter')!
    expect(one.low).toBeLessThan(one.limits![0])
    expect(one).toMatchObject({ verdict: 'holds', measured: { better: true } })
    expect(out).toMatch(/ bottom diameter .* \.8764-\.8835 /)
    expect(out.replace(/\s+/g, ' ')).toContain('at the stop: measured and corrected there')
    const without = text({
      bottom: '0.880 ±0.006',
      instruments: 'missing: [micrometer, blade-micrometer, depth-micrometer, depth-indicator, inside-caliper]',
    })
    expect(first(without.plan).budget.find(({ id }) => id === 'bottomDiameter')).toMatchObject({
      verdict: 'may not hold',
    })
  })

  it('leaves out a correction by which a size that holds would no longer surely hold', () => {
    const tight = first(planOf(job({ width: '0.160 ±0.002' })))
    expect(tight.corrects).toEqual({ bottom: true, width: false })
    const width = tight.budget.find(({ id }) => id === 'width')!
    expect(width.verdict).toBe('holds')
    expect(width.measured).toBeUndefined()
    const steps = sheetFor(planOf(job({ width: '0.160 ±0.002' }))).steps
    expect(steps.some(({ widthCorrections }) => widthCorrections !== undefined)).toBe(false)
    expect(steps.some(({ corrections }) => corrections !== undefined)).toBe(true)
  })
})

/** Every combination of the stated errors at their ends, and the table followed as a hand does: nothing comes out beyond what is promised. */
it('holds at every corner of the stated errors, by the table on the sheet', () => {
  const plan = planOf(job({}))
  const feature = first(plan)
  const stop = stopOf(feature.operation, feature.trace)!
  const shop = {
    lathe: plan.lathe,
    setup: plan.setup,
    progress: feature.before,
    operation: feature.operation,
    stop,
    reads: readsOf(feature),
  }
  const table = correctionTable(shop, feature.budget, 'inch')!
  const { low, high } = feature.budget.find(({ id }) => id === 'bottomDiameter')!.measured!
  const thou = INCH / 1000
  const found: number[] = []
  const ends = [-1, -0.6, 0, 0.6, 1]
  for (const zero of ends)
    for (const rough of ends)
      for (const off of ends) {
        // On the diameter: touch and runout twice, the stock once; each reading twice; the instrument as it is.
        const atStop = zero * (2 * 1.5 + 0.5) * thou
        const read = stop.expected + atStop + rough * thou + off * 0.5 * thou
        const shown = Math.round(read / (thou / 2)) * (thou / 2)
        const deeper = deeperOnPaper({ bottom: table, width: null }, shown)
        if (deeper === null) continue
        const { bottom } = finishedAt(shop, atStop, deeper)
        found.push(bottom - thou, bottom + thou)
      }
  expect(found.length).toBeGreaterThan(150)
  // What the micrometer is rounded to when it is read is within what it may be off.
  expect(Math.min(...found)).toBeGreaterThanOrEqual(low - thou / 4 - 1000)
  expect(Math.max(...found)).toBeLessThanOrEqual(high + thou / 4 + 1000)
  expect(Math.max(...found) - Math.min(...found)).toBeGreaterThan(0.8 * (high - low))
})
