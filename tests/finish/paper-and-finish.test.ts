import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { offPaper } from '../../src/finish/paper.ts'
import { readsOf } from '../../src/finish/reads.ts'
import { remainingFor } from '../../src/finish/remaining.ts'
import { stopOf } from '../../src/finish/stop.ts'
import { correctionTable } from '../../src/finish/table.ts'
import { widthTable } from '../../src/finish/width-table.ts'
import type { Load } from '../../src/job/read-job.ts'
import { readable, type Scale } from '../../src/lathe/lathe.ts'
import type { Plan } from '../../src/plan/plan.ts'
import { replayNext, startOf } from '../../src/replay/replay.ts'
import type { Corrections, SheetStep, WidthCorrections } from '../../src/sheet/sheet.ts'
import { sheetAfter } from '../../src/sheet-after.ts'
import { inUnits, perUnit } from '../../src/units/length.ts'
import { jobs } from '../properties/jobs.ts'
import { CAMPAIGN, runs } from '../runs.ts'

/**
 * Who reads the tables on paper and who asks `finish` must be told the same reading. The rule is written here once more, from the words on the sheet
 * and on the figures that the sheet prints.
 */
type Table = Pick<Corrections | WidthCorrections, 'expected' | 'most' | 'between' | 'rows'>
type Told = { readonly step: number; readonly reading: number }

/** A row itself; between two rows in proportion, to the nearest reading of the dial; in doubt the one that leaves metal. */
const byPaper = ({ rows }: Table, measured: number, step: number, leaves: 'lower' | 'higher'): readonly Told[] => {
  const rising = rows.toSorted((a, b) => a.measured.value - b.measured.value)
  const under = rising.findLast((row) => row.measured.value <= measured + 1e-7) ?? rising[0]!
  const over = rising.find((row) => row.measured.value >= measured - 1e-7) ?? rising.at(-1)!
  const span = over.measured.value - under.measured.value
  const share = span < 1e-7 ? 0 : (measured - under.measured.value) / span
  const marks = ((over.finishes[0]!.reading - under.finishes[0]!.reading) * share) / step
  const whole = leaves === 'lower' ? Math.ceil(marks - 0.5 - 1e-5) : Math.floor(marks + 0.5 + 1e-5)
  return under.finishes.map(({ step: number, reading }) => ({
    step: number,
    reading: Number((reading + whole * step).toFixed(9)) + 0,
  }))
}

const TENTH = { inch: 1e-4, mm: 1e-3 }
/** Every row, and every tenth of a thousandth (or micrometer) between; only the rows where the sheet leaves what is between to `finish`. */
const every = ({ rows, expected, most, between }: Table, units: 'inch' | 'mm'): number[] => {
  const steps = between === 'none' ? -1 : Math.floor(most.value / TENTH[units] + 1e-6)
  const all = Array.from({ length: Math.max(0, 2 * steps + 1) }, (_, i) => expected.value + (i - steps) * TENTH[units])
  return [...rows.map(({ measured }) => measured.value), ...all]
}

/** Does a reading without a row stand beside this one? Then the sheet says to use `finish`. */
const rowless = (step: SheetStep): boolean =>
  step.more.some((phrase) => phrase.some((part) => typeof part === 'string' && part.includes('no row')))

const scaleFor = ({ lathe }: Plan, slide: SheetStep['slide']): Scale =>
  slide === 'cross-feed' ? lathe.crossFeed : slide === 'compound' ? lathe.compound.scale : lathe.carriage!
const stepFor = (plan: Plan, slide: SheetStep['slide']): number => {
  const scale = scaleFor(plan, slide)
  return inUnits(readable(scale), scale.units)
}

const tally = { bottoms: 0, widths: 0 }

/** Every measurement of every table of a plan, looked up and asked. `keep`: which of them. */
const disagreements = (plan: Plan, keep: (i: number) => boolean): string[] => {
  const sheet = sheetFor(plan)
  const steps = new Map(sheet.steps.map((step) => [step.number, step]))
  let progress = startOf(plan.setup)
  return plan.features.flatMap((feature, index) => {
    if (feature.status !== 'planned') return []
    const before = progress
    progress = replayNext(plan.lathe, plan.setup, before, feature.operation, 0).after
    const at = sheet.steps.find((step) => step.feature === index && (step.corrections ?? step.widthCorrections))
    const stop = stopOf(feature.operation, feature.trace)
    if (at === undefined || stop === null) return []
    const { operation } = feature
    const shop = { lathe: plan.lathe, setup: plan.setup, progress: before, operation, stop, reads: readsOf(feature) }
    const bottom = correctionTable(shop, feature.budget, plan.units)
    const width = widthTable(shop, feature.budget, plan.units, bottom?.rows.length ? bottom : null)
    const first = sheet.steps.find((step) => step.feature === index)!.number
    const asked = (measured: number, wide: number | null, told: readonly Told[], word: string): string[] => {
      const taken = { bottom: measured, width: wide, outside: null }
      const found = remainingFor(shop, taken, { bottom, width })
      if (!found.ok) return [`${feature.name} ${word}: refused, ${found.why}`]
      const said = told.map(({ step }) => {
        const { slide } = steps.get(step)!
        const count = found.operation.moves[step - first]!.count!
        return { step, reading: Number((count * stepFor(plan, slide)).toFixed(9)) + 0 }
      })
      return JSON.stringify(said) === JSON.stringify(told)
        ? []
        : [`${feature.name} ${word}: paper ${JSON.stringify(told)}, finish ${JSON.stringify(said)}`]
    }
    const { corrections, widthCorrections } = at
    const unit = perUnit(plan.units)
    const bottoms =
      corrections === undefined || rowless(at) ? [] : every(corrections, plan.units).filter((_, i) => keep(i))
    const widths =
      widthCorrections === undefined || rowless(at) ? [] : every(widthCorrections, plan.units).filter((_, i) => keep(i))
    tally.bottoms += bottoms.length
    tally.widths += widths.length
    return [
      ...bottoms.flatMap((key) => {
        const measured = corrections!.byDepth ? operation.surface - key * unit : key * unit
        if (offPaper(bottom!, measured)) return [`${key} is not within its own table`]
        const { slide } = steps.get(corrections!.rows[0]!.finishes[0]!.step)!
        return asked(measured, null, byPaper(corrections!, key, stepFor(plan, slide), 'lower'), `bottom ${key}`)
      }),
      ...widths.flatMap((key) => {
        const { begins, slide } = width!
        const told = byPaper(widthCorrections!, key, stepFor(plan, slide), begins ? 'higher' : 'lower')
        return asked(stop.expected, key * unit, told, `width ${key}`)
      }),
    ]
  })
}

const JOBS = join(import.meta.dirname, '..', '..', 'examples', 'jobs')
const load: Load = (path, from) => {
  const file = from === null ? join(JOBS, path) : join(dirname(from), path)
  return { ok: true, file, bytes: readFileSync(file) }
}

describe.each(readdirSync(JOBS).filter((name) => name.endsWith('.yaml')))('the tables of %s', (name) => {
  it('tell what finish tells, at each row and many a tenth between', { timeout: 240_000 }, () => {
    expect(disagreements(compile(name, load).plan!, (i) => i < 12 || CAMPAIGN || i % 4 === 0)).toEqual([])
  })
})

describe('the tables of random jobs', () => {
  it('tell what finish tells', { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(jobs, fc.integer({ min: 0, max: 8 }), (job, start) => {
        const bytes = new TextEncoder().encode(job.text)
        const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes }))
        fc.pre(plan !== null)
        // Every row (they stand first) would be too few where most measure between them: each ninth reading, from another one each time.
        expect(disagreements(plan!, (i) => i % 9 === start)).toEqual([])
      }),
      { numRuns: runs(12), seed: 19_420_901 },
    )
    expect(tally.bottoms).toBeGreaterThan(500)
    expect(tally.widths).toBeGreaterThan(50)
  })
})

describe('the whole sheet of what remains', () => {
  it('has the reading of the row, and none past the last', () => {
    const plan = compile('01-press-screw.yaml', load).plan!
    // Outside .8745: .106 less is .7685, its row says 73; .105 is halfway to .104 (74): the shallower.
    const reading = (bottom: number): number | null | undefined => {
      const taken = { bottom: bottom * perUnit('inch'), width: null, outside: null }
      return sheetAfter(plan, 0, taken).steps.find(({ action }) => action === 'feed-in')?.reading
    }
    expect([reading(0.7685), reading(0.7695), reading(0.7696)]).toEqual([0.073, 0.073, 0.074])
    expect(reading(0.7706)).toBeUndefined()
  })
})
