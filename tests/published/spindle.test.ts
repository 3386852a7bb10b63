import { describe, expect, it } from 'vitest'
import { findMaterial } from '../../src/handbook/materials.ts'
import { spindleSpeed } from '../../src/handbook/spindle.ts'
import { INCH, MM } from '../../src/units/length.ts'
import charts from './cutting-speeds.json' with { type: 'json' }
import examples from './spindle.json' with { type: 'json' }

const wanted = (cuttingSpeed: number, speedUnits: 'ft/min' | 'm/min', diameter: number): number =>
  spindleSpeed({ cuttingSpeed, speedUnits, diameter, factor: 1, speeds: [1] }).wanted

describe('spindle speeds worked in print', () => {
  it('has the rows', () => {
    expect([examples.short.length, examples.exact.length, examples.recomputedMetric.length]).toEqual([4, 2, 3])
  })

  // The short formula 4·CS/D stands for 12·CS/(π·D): it is higher by π/3.
  it.each(examples.short)('$feetPerMinute ft/min on $diameter in: $rpm by the short formula ($source)', (row) => {
    expect((wanted(row.feetPerMinute, 'ft/min', row.diameter * INCH) * Math.PI) / 3).toBeCloseTo(row.rpm, 6)
  })

  it.each(examples.exact)('$feetPerMinute ft/min on $diameter in: $rpm ($source)', (row) => {
    expect(Math.round(wanted(row.feetPerMinute, 'ft/min', row.diameter * INCH))).toBe(row.rpm)
  })

  it.each(examples.recomputedMetric)('$metersPerMinute m/min on $diameter mm: $rpm (recomputed, not read)', (row) => {
    expect(wanted(row.metersPerMinute, 'm/min', row.diameter * MM)).toBeCloseTo(row.rpm, 3)
  })
})

/** Which published line stands behind which row of ours. */
const CHART: Record<string, string[]> = {
  'brass and bronze': ['brass'],
  copper: ['copper'],
  'cast iron, soft': ['soft cast iron'],
  'cast iron, hard': ['hard cast iron'],
  'mild steel': ['mild steel'],
  'cast steel': ['cast steel'],
  'alloy steel, hard': ['hard alloy steel'],
  'tool steel': ['tool steel'],
  titanium: ['titanium'],
}
const ROUGHING: Record<string, string> = {
  'low-carbon steel': 'mild steel',
  'high-carbon steel, annealed': 'high-carbon steel',
  'alloy steel, normalized': 'alloy steel',
  'aluminium alloys': 'aluminum',
  'cast iron': 'cast iron',
  bronze: 'bronze',
}
const STAINLESS: Record<string, string> = { '303/420F': '303', '304/316 group (302,304,309,310,314,316)': '304' }

describe('cutting speeds as published', () => {
  it('has the rows', () => {
    expect([charts.chart.length, charts.roughing.length, charts.stainlessRoughing.length]).toEqual([11, 6, 4])
  })

  it("agrees with the bench-lathe manual's chart", () => {
    let checked = 0
    for (const row of charts.chart) {
      for (const name of CHART[row.work] ?? []) {
        expect(findMaterial(name)?.hssFtPerMin, name).toBe(row.feetPerMinute)
        checked++
      }
    }
    expect(checked).toBe(9)
  })

  it.each(charts.roughing)('$work roughs at $feetPerMinute ft/min ($source)', (row) => {
    expect(findMaterial(ROUGHING[row.work]!)?.hssFtPerMin).toBe(row.feetPerMinute)
  })

  it('stays at the upper end of the Army table for roughing stainless steel', () => {
    const rows = charts.stainlessRoughing.filter((row) => row.work in STAINLESS)
    expect(rows.length).toBe(2)
    for (const row of rows) expect(findMaterial(STAINLESS[row.work]!)?.hssFtPerMin).toBe(row.feetPerMinute[1])
  })

  it('takes the lowest line of the data book for free-machining and medium-carbon steel', () => {
    const lowest = (name: RegExp): number =>
      Math.min(...charts.dataBook.filter((row) => name.test(row.work)).map((row) => row.feetPerMinute))
    expect(findMaterial('1212')?.hssFtPerMin).toBe(lowest(/free-machining/))
    expect(findMaterial('1045')?.hssFtPerMin).toBe(lowest(/medium carbon/))
  })
})
