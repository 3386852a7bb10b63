import { describe, expect, it } from 'vitest'
import rows from './speed-bands.json' with { type: 'json' }
import { INCH_LATHE, planned } from './whole-job.ts'

it('has the rows', () => {
  expect(Object.fromEntries(Object.entries(rows).map(([name, list]) => [name, list.length]))).toEqual({
    dataBook: 27,
    stainless: 4,
    in1914: 5,
    course: 9,
    chart: 11,
    manual: 6,
    r20: 1,
    r10: 1,
  })
})

const job = (material: string, diameter: number, speeds?: readonly number[]) =>
  planned({
    units: 'inch',
    part: `diameter: ${diameter}, length: 3`,
    tool: 'shape: square, width: 0.125, reach: 0.2',
    feature: 'kind: groove, near: 0.5, width: 0.125, depth: 0.05',
    material,
    lathe: speeds ? INCH_LATHE.replace(/spindle-speeds: .*/, `spindle-speeds: [${speeds.join(', ')}]`) : INCH_LATHE,
  }).feature.spindle

/** Which published lines speak of a material of the program; each a pattern over their `work`. */
const SPEAKS: readonly (readonly [string, RegExp])[] = [
  ['mild steel', /^mild steel|^low-carbon steel|low carbon$|^machine steel/],
  ['free-machining steel', /free-machining$/],
  ['medium-carbon steel', /medium carbon$|^1045$/],
  ['high-carbon steel', /high carbon$|^high-carbon/],
  ['alloy steel', /medium carbon alloy$|^4140$|^alloy steel, normalized/],
  ['hard alloy steel', /^alloy steel, hard/],
  ['tool steel', /^tool steel|tool steel$/],
  ['cast steel', /^cast steel/],
  ['stainless steel', /^stainless steel|^304/],
  ['free-machining stainless steel', /^303|^430F/],
  ['cast iron', /^cast iron|grey cast iron/],
  ['brass', /^brass|brass$/],
  ['bronze', /^bronze|bronze$/],
  ['copper', /^copper/],
  ['aluminum', /^aluminium/],
  ['titanium', /^titanium/],
]

type Line = { work: string; feetPerMinute?: number | number[]; rough?: number | number[]; finish?: number | number[] }

const speeds = (line: Line): number[] => [line.feetPerMinute ?? [], line.rough ?? [], line.finish ?? []].flat()

const lines: readonly Line[] = [
  ...rows.dataBook,
  ...rows.stainless,
  ...rows.in1914,
  ...rows.course,
  ...rows.chart,
  ...rows.manual,
]

describe('cutting speeds on whole jobs', () => {
  it('leaves no published line out', () => {
    const unheard = lines.filter(({ work }) => !SPEAKS.some(([, pattern]) => pattern.test(work)))
    expect(unheard.map(({ work }) => work)).toEqual(['420/431/440/442/446/347/321'])
  })

  it.each(SPEAKS)(
    '%s: between the slowest and the fastest that is published, no slower than in 1914',
    (material, pattern) => {
      const published = lines.filter(({ work }) => pattern.test(work)).flatMap(speeds)
      const spindle = job(material, 2)
      expect(spindle.cuttingSpeed).toBeGreaterThanOrEqual(Math.min(...published))
      expect(spindle.cuttingSpeed).toBeLessThanOrEqual(Math.max(...published))
      const customary = rows.in1914
        .filter(({ work }) => pattern.test(work))
        .map(({ feetPerMinute }) => feetPerMinute[0]!)
      for (const slowest of customary) expect(spindle.cuttingSpeed).toBeGreaterThanOrEqual(slowest)
      // Jones 1914: rpm = 12·CS / (π·D). Grooving: "reduce" (a Navy manual, no number given).
      expect(spindle.wanted).toBeCloseTo((12 * spindle.cuttingSpeed * spindle.factor) / (Math.PI * 2), 2)
      expect(spindle.factor).toBeLessThan(1)
    },
  )
})

describe('speeds of the R20 and R10 series', () => {
  it.each([
    ['R20', rows.r20[0]!.steps, 1.123],
    ['R10', rows.r10[0]!.steps, 1.27],
  ] as const)('%s: the next that is not faster, less than one step under', (_, steps, ratio) => {
    const series = [10, 100, 1000].flatMap((decade) => steps.map((step) => Math.round(step * decade * 100) / 100))
    for (const diameter of [0.3, 0.45, 0.7, 1, 1.4, 1.9, 2.7, 3.6, 5.2]) {
      const { rpm, wanted } = job('mild steel', diameter, series)
      expect(series).toContain(rpm)
      expect(rpm).toBe(Math.max(...series.filter((speed) => speed <= wanted)))
      // Preferred numbers are rounded: two neighbors are at most this far apart.
      expect(wanted / rpm).toBeLessThan(ratio + 0.01)
    }
  })
})
