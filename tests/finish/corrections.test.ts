import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { correctedFor } from '../../src/finish/measured.ts'
import { bottomWanted, stopOf } from '../../src/finish/stop.ts'
import type { Load } from '../../src/job/read-job.ts'
import type { Plan } from '../../src/plan/plan.ts'
import { printJson } from '../../src/print/json/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { startOf } from '../../src/replay/replay.ts'
import { INCH } from '../../src/units/length.ts'

const JOBS = join(import.meta.dirname, '..', '..', 'examples', 'jobs')
const load: Load = (path, from) => {
  const file = from === null ? join(JOBS, path) : join(dirname(from), path)
  return { ok: true, file, bytes: readFileSync(file) }
}
const planOf = (job: string): Plan => compile(job, load).plan!
const measureStepOf = (plan: Plan) => sheetFor(plan).steps.find((step) => step.corrections !== undefined)!

type Dial = { units: string; graduation: number; readTo: number; reads: string }
type Json = {
  features: {
    surface: number
    compoundAngle: number
    finished: Record<string, { limits: number[] | null; planned: number }>
  }[]
  steps: {
    number: number
    feature: number
    slide?: string
    reading?: number
    say: string
    corrections?: {
      measure: string
      expected: number
      most: number
      rows: {
        measured: number
        finishes: { step: number; reading: number }[]
        bottomDiameter: number
        within: boolean | null
      }[]
    }
  }[]
  lathe: { crossFeed: Dial; compound: Dial }
  units: string
}
const jsonOf = (job: string): Json => JSON.parse(printJson(sheetFor(planOf(job))))

describe('two measurements followed by hand', () => {
  it('corrects a depth dial by half of what the diameter is off', () => {
    // Roughed at .054 under a surface of .8745: .108 less is expected. The micrometers say .8745 and .7685: .106, so at reading 54 the
    // floor is only .053 deep and the zero stands .001 out. For a depth of .072 the dial must show .073.
    const { corrections } = measureStepOf(planOf('01-press-screw.yaml'))
    expect(corrections!.byDepth).toBe(true)
    expect(corrections!.expected.value).toBe(0.108)
    const row = corrections!.rows.find(({ measured }) => measured.value === 0.106)!
    expect(row.finishes).toEqual([{ step: 25, reading: 0.073, turns: 0, mark: 73 }])
    expect(row.bottom.value).toBe(0.7305)
    expect(row.within).toBe(true)
  })

  it('corrects a dial that reads diameter by all of it', () => {
    // The dial reads diameter. Expected is .9545; the micrometer says .9525, two thousandths too small: finish .002 less far than written.
    const sheet = sheetFor(planOf('02-tap-plug.yaml'))
    const { corrections } = sheet.steps.find((step) => step.corrections !== undefined)!
    expect(corrections!.byDepth).toBe(false)
    expect(corrections!.expected.value).toBe(0.9545)
    const written = sheet.steps.find(({ number }) => number === 25)!
    expect([written.turns, written.mark]).toEqual([1, 10])
    const row = corrections!.rows.find(({ measured }) => measured.value === 0.9525)!
    expect(row.finishes).toEqual([{ step: 25, reading: 0.208, turns: 1, mark: 8 }])
  })
})

describe('the lines under the stop', () => {
  it('say what the dial shows, and when to stop', () => {
    const text = printText(sheetFor(planOf('01-press-screw.yaml')))
    expect(text).toContain('.104: finish at 74; .106: 73')
    expect(text).toContain('over .004 off: STOP, measure again')
    expect(printText(sheetFor(planOf('02-tap-plug.yaml')))).toContain('.9545: 1 turn and 10')
  })

  it('move all finishes alike where they stand at readings of their own', () => {
    const text = printText(sheetFor(planOf('09-swung-compound.yaml'))).replace(/\s+/g, ' ')
    expect(text).toContain('.128: 1 mark deeper; .130: as written')
    expect(text).toContain('2 marks less deep')
  })
})

describe.each(readdirSync(JOBS).filter((name) => name.endsWith('.yaml')))('every table of %s', (name) => {
  it('is the formula of the bench, rounded to the dial, and comes out within the limits', () => {
    const sheet = jsonOf(name)
    // Around a corner there is no size to measure before it is finished; a caliper is no surer than the cut.
    expect(sheet.steps.some(({ corrections }) => corrections !== undefined)).toBe(!/^(06|32)/.test(name))
    for (const { corrections, feature } of sheet.steps) {
      if (corrections === undefined) continue
      const { rows, expected, most, measure } = corrections
      const finisher = sheet.steps.find((one) => one.number === rows[0]!.finishes[0]!.step)!
      const dial = finisher.slide === 'compound' ? sheet.lathe.compound : sheet.lathe.crossFeed
      // A compound that feeds down a flank goes 1/cos of half the angle further than it goes in.
      const sloping =
        finisher.slide === 'compound' ? Math.sin((sheet.features[feature]!.compoundAngle * Math.PI) / 180) : 1
      const step = dial.graduation * dial.readTo
      const perUnit = dial.units === sheet.units ? 1 : dial.units === 'mm' ? 25.4 : 1 / 25.4
      expect(rows.length).toBeGreaterThanOrEqual(3)
      expect(rows.length).toBeLessThanOrEqual(9)
      const sign = measure === 'outsideLessBottom' ? -1 : 1
      for (const { measured, finishes, within, bottomDiameter } of rows) {
        expect(Math.abs(measured - expected)).toBeLessThanOrEqual(most + 1e-9)
        expect(within).not.toBe(false)
        // Of the drawing, not of the plan: the planned bottom may itself be half a step off.
        const { limits, planned } = sheet.features[feature]!.finished.bottomDiameter!
        if (limits !== null) {
          expect(bottomDiameter).toBeGreaterThanOrEqual(limits[0]! - 1e-6)
          expect(bottomDiameter).toBeLessThanOrEqual(limits[1]! + 1e-6)
        }
        const onDiameter = (step / perUnit) * (dial.reads === 'diameter' ? 1 : 2) * sloping
        expect(Math.abs(bottomDiameter - planned)).toBeLessThanOrEqual(onDiameter + 1e-4)
        for (const { step: number, reading } of finishes) {
          const written = sheet.steps.find((one) => one.number === number)!.reading!
          const off = (sign * (measured - expected) * perUnit * (dial.reads === 'diameter' ? 1 : 0.5)) / sloping
          expect(Math.abs(reading - written - off)).toBeLessThanOrEqual(step + 1e-4)
          expect(Math.abs(reading / step - Math.round(reading / step))).toBeLessThan(1e-6)
        }
      }
    }
  })
})

describe('a bottom that was measured', () => {
  const plan = planOf('01-press-screw.yaml')
  const feature = plan.features[0]!
  if (feature.status !== 'planned') throw new Error('the first example is planned')
  const stop = stopOf(feature.operation, feature.trace)!
  const shop = {
    lathe: plan.lathe,
    setup: plan.setup,
    progress: startOf(plan.setup),
    operation: feature.operation,
    stop,
  }

  it('is where the replay of the moves before the stop leaves the floor', () => {
    const measured = 0.7702 * INCH
    const { trace } = correctedFor(shop, measured)
    const there = trace.at[stop.at]!.find(({ id }) => id === 'bottomDiameter')!
    expect(there.surely).toBeCloseTo(measured, -2)
    expect((trace.zero.diameter - feature.trace.zero.diameter) / INCH).toBeCloseTo(0.0037, 9)
  })

  it('leaves metal where two readings are as near', () => {
    // Half a mark off: .0005 in depth, .001 in diameter. The finish stays at the smaller reading, and the bottom .001 large.
    const { deeper, bottom } = correctedFor(shop, stop.expected + 0.001 * INCH)
    expect(deeper).toBe(0)
    expect(bottom / INCH).toBeCloseTo(0.7315, 9)
  })

  it('is told from one that is already past the drawing', () => {
    const { limits } = bottomWanted(feature.operation)
    const { within, faults } = correctedFor(shop, limits![0] - 0.002 * INCH)
    expect(within).toBe(false)
    expect(faults.map(({ kind }) => kind)).not.toContain('metal-left')
  })
})
