import { describe, expect, it } from 'vitest'
import type { Taken } from '../../src/moves/inspection.ts'
import { zonesOf } from '../../src/sheet/decision.ts'
import { INCH } from '../../src/units/length.ts'
import { runIn } from '../cli/world.ts'
import rows from './decision.json' with { type: 'json' }

type Pair = [number, number]
const by = (within: number): Taken => ({ with: 'micrometer', within: within * INCH, reads: 1 })
const inches = (values: readonly number[]): number[] => values.map((value) => Number((value / INCH).toFixed(6)))

describe.each(rows.zones)('limits $limits and U $U', ({ limits, U, accept, reject }) => {
  const given = (limits as Pair).map((limit) => limit * INCH) as unknown as Pair
  it('prove what lies inside by U, reject what lies outside by U, and nothing in between', () => {
    const zones = zonesOf('prove', { limits: given, by: by(U) })!
    expect(zones.accept === null ? null : inches(zones.accept)).toEqual(accept)
    expect(inches([zones.rejectUnder, zones.rejectOver])).toEqual(reject)
  })

  it('accept and reject at the limits where simple acceptance is asked for', () => {
    const zones = zonesOf('simple', { limits: given, by: by(U) })!
    expect(rows.simple.guard).toBe(0)
    expect(inches(zones.accept!)).toEqual(limits)
    expect(inches([zones.rejectUnder, zones.rejectOver])).toEqual(limits)
  })
})

it('guards by no less than the edition of 2017 asks', () => {
  const { accept } = zonesOf('prove', { limits: [0, INCH], by: by(0.1) })!
  expect(accept![0] / INCH).toBeGreaterThanOrEqual(0.1 * rows.guard.ratio)
  expect(rows.guard.oneSided95 / rows.guard.k).toBeCloseTo(rows.guard.ratio, 2)
})

it('decides nothing without limits, or without an instrument', () => {
  expect(zonesOf('prove', { limits: null, by: by(0.1) })).toBeNull()
  expect(zonesOf('prove', { limits: [0, 1], by: null })).toBeNull()
})

const job = (decision: string, instruments = ''): string =>
  [
    'title: Decision',
    'units: inch',
    decision,
    'part: { material: mild steel, diameter: 1, length: 3, overhang: 2, measured-diameter: 1 }',
    'lathe:',
    '  name: Bench lathe',
    '  cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.008 }',
    '  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.006 }',
    '  spindle-speeds: [60, 150, 380]',
    `  instruments: { ${instruments} }`,
    'tools: { neck: { shape: square, width: 0.150, reach: 0.2 } }',
    'features: [{ kind: groove, near: 0.5, width: 0.160 ±0.002, depth: 0.06, tool: neck }]',
  ].join('\n')

const inspected = async (text: string): Promise<string> => {
  const { out, err } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--inspection')
  expect(err).toBe('')
  return out.slice(out.indexOf('== INSPECTION')).replace(/\s+/g, ' ')
}

it('stands on the inspection, by the key of the job', async () => {
  const proved = await inspected(job('decision: prove'))
  expect(await inspected(job(''))).toBe(proved)
  expect(proved).toMatch(/ISO 14253-1/)
  expect(proved).toMatch(/accept \.1585 to \.1615, reject under \.1575, over \.1625; between: not proved/)
  const simple = await inspected(job('decision: simple'))
  expect(simple).toMatch(/accept \.158 to \.162, reject the rest/)
  expect(simple).not.toMatch(/ISO 14253-1/)
  const coarse = await inspected(job('decision: prove', 'inside-caliper: 0.003, missing: [gauge-blocks]'))
  expect(coarse).toMatch(/proves nothing within the limits: take a surer one; reject under \.155, over \.165/)
})
