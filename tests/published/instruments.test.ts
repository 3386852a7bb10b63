import { describe, expect, it } from 'vitest'
import { keysOf } from '../../src/job/keys.ts'
import { readsTo, usualInstruments } from '../../src/lathe/instruments.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { runIn } from '../cli/world.ts'
import rows from './instruments.json' with { type: 'json' }

type Name = keyof ReturnType<typeof usualInstruments>

describe.each(rows.instruments)('$key', ({ key, inch, mm, published }) => {
  it('is as sure as it is said to be, and never surer than published', () => {
    const stated = keysOf('lathe').find(({ paths }) => paths.includes(`instruments.${key}`))!
    expect(stated.byDefault).toContain(`${inch} (${mm})`)
    expect(usualInstruments('inch')[key as Name]! / INCH).toBeGreaterThanOrEqual(published.in - 1e-9)
    expect(usualInstruments('mm')[key as Name]! / MM).toBeGreaterThanOrEqual(published.mm - 1e-9)
  })
})

it('reads a caliper to a thousandth, and what is surer as finely as it is sure', () => {
  // ASME B89.1.14-2018: an inch vernier or dial caliper has a least count of 0.001 in.
  expect(readsTo('caliper', INCH / 500, 'inch')).toBe(INCH / 1000)
  expect(readsTo('micrometer', INCH / 10_000, 'inch')).toBe(INCH / 10_000)
})

const job = (width: string, instruments = ''): string =>
  [
    'title: Instruments',
    'units: inch',
    'part: { material: mild steel, diameter: 1, length: 3, overhang: 2, measured-diameter: 1 }',
    'lathe:',
    '  name: Bench lathe',
    '  cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.008 }',
    '  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.006 }',
    '  spindle-speeds: [60, 150, 380]',
    instruments === '' ? '' : `  instruments: ${instruments}`,
    'tools: { neck: { shape: square, width: 0.150, reach: 0.2 } }',
    `features: [{ kind: groove, near: 0.5, width: ${width}, depth: 0.06 ±0.004, tool: neck }]`,
  ].join('\n')

type Line = { id: string; instrument: string | null; within: number | null; using: string }
type Step = { action: string; say: string; corrections?: { rows: { measured: number }[] }; widthCorrections?: object }
type Data = { features: { inspection: Line[] }[]; steps: Step[] }

const sheetOf = async (text: string): Promise<Data> => {
  const { out, err } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--format', 'json')
  expect(err).toBe('')
  return JSON.parse(out) as Data
}
const lineOf = ({ features }: Data, id: string): Line => features[0]!.inspection.find((one) => one.id === id)!
const stopOf = ({ steps }: Data): Step => steps.find(({ action }) => action === 'measure')!

describe('what a width is taken with', () => {
  // A caliper of U: limits 8U apart are four times the interval of 2U.
  const { tolerance, U, ratio } = rows.ratio
  it.each([
    [tolerance, 'inside-caliper'],
    [tolerance * 0.99, 'gauge-blocks'],
  ])('with limits %s apart is the %s', async (apart, instrument) => {
    expect(tolerance / (2 * U)).toBe(ratio)
    const limits = `${(0.16 - apart / 2).toFixed(5)} to ${(0.16 + apart / 2).toFixed(5)}`
    const data = await sheetOf(job(limits, `{ inside-caliper: ${U}, gauge-blocks: 0.0002 }`))
    expect(lineOf(data, 'width').instrument).toBe(instrument)
    expect(stopOf(data).say).toContain(instrument === 'gauge-blocks' ? 'gauge blocks: width' : 'caliper: width')
  })
})

it('asks for no size that nothing at hand takes, and corrects nothing by it', async () => {
  const all = await sheetOf(job('0.160 ±0.005'))
  expect(stopOf(all).say).toMatch(/burr stoned off.*blade micrometer: bottom diameter, /)
  expect(stopOf(all).corrections).toBeDefined()
  const missing = '[micrometer, blade-micrometer, depth-micrometer, inside-caliper, depth-indicator, pins]'
  const few = await sheetOf(job('0.160 ±0.005', `{ missing: ${missing} }`))
  expect(stopOf(few).say).toMatch(/not asked, nothing at hand takes it: depth, bottom diameter/)
  expect(stopOf(few).say).not.toMatch(/bottom diameter, \./)
  expect(stopOf(few).corrections).toBeUndefined()
  expect(stopOf(few).widthCorrections).toBeDefined()
  expect(lineOf(few, 'bottomDiameter')).toMatchObject({ instrument: null, within: null })
})

it('has rows no finer than what the bottom is taken with is read', async () => {
  const apart = async (instruments: string): Promise<number> => {
    const rows = stopOf(await sheetOf(job('0.160 ±0.005', instruments))).corrections!.rows
    return Math.min(...rows.slice(1).map(({ measured }, i) => Math.abs(measured - rows[i]!.measured)))
  }
  // Depth micrometer: half of its mark, .0005, counts twice on the diameter.
  const rodOnly = '{ missing: [micrometer, blade-micrometer] }'
  const data = await sheetOf(job('0.160 ±0.005', rodOnly))
  for (const { measured } of stopOf(data).corrections!.rows)
    expect(measured / 0.001).toBeCloseTo(Math.round(measured / 0.001), 6)
  expect(await apart(rodOnly)).toBeGreaterThan(0.00099)
})
