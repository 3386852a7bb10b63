import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Budgeted } from '../../src/budget/budgeted.ts'
import { warningOf } from '../../src/gains/words.ts'
import type { Job } from '../../src/job/job.ts'
import { words } from '../../src/phrase/words.ts'
import type { FeaturePlan } from '../../src/plan/plan.ts'
import { proofOf } from '../../src/sheet/proof.ts'
import { MM, perUnit, type Units } from '../../src/units/length.ts'
import { told } from '../prose.ts'
import { groove, plan } from './fixture.ts'

/** What a size may come to is shown outward of what it is, and by no more than a place of what is shown. */
const feature = groove as Extract<FeaturePlan, { status: 'planned' }>
const shownBy = (units: Units, budgeted: Budgeted) => {
  const { lines } = proofOf(plan({ units }), { ...feature, budget: [budgeted] }, 0)
  const { low, high, spare } = lines[0]!
  const text = (one: typeof low) => Number(words([one], units).replace(/"$/, ''))
  return { low: text(low), high: text(high), spare: spare === null ? null : text(spare) }
}
const sizes = fc
  .tuple(
    fc.constantFrom<Units>('inch', 'mm'),
    fc.integer({ min: 1_000_000, max: 2_000_000_000 }),
    fc.integer({ min: 0, max: 400_000_000 }),
    fc.integer({ min: -2_000_000, max: 2_000_000 }),
  )
  .map(([units, at, wide, past]) => {
    const [low, high] = [at, at + wide]
    const limits = [low + past, high + 10_000_000] as const
    const spare = Math.min(low - limits[0], limits[1] - high)
    const verdict = spare < 0 ? ('may not hold' as const) : ('holds' as const)
    const budgeted: Budgeted = {
      id: 'far',
      planned: (low + high) / 2,
      low,
      high,
      rss: 0,
      limits,
      verdict,
      spare,
      worstCause: 'layout',
    }
    return { units, budgeted }
  })

describe('bounds as they are shown', () => {
  it('never lie inward, nor further out than a place of what is shown', () => {
    fc.assert(
      fc.property(sizes, ({ units, budgeted }) => {
        const { low, high } = shownBy(units, budgeted)
        const [from, to] = [budgeted.low, budgeted.high].map((one) => one / perUnit(units)) as [number, number]
        const place = units === 'inch' ? 0.0001 : 0.001
        expect(low).toBeLessThanOrEqual(from + 1e-9)
        expect(high).toBeGreaterThanOrEqual(to - 1e-9)
        expect(from - low).toBeLessThan(place + 1e-9)
        expect(high - to).toBeLessThan(place + 1e-9)
      }),
      { numRuns: 2000 },
    )
  })

  it('show a size no further beyond its limit than half as much again as it is', () => {
    fc.assert(
      fc.property(sizes, ({ units, budgeted }) => {
        fc.pre(budgeted.verdict === 'may not hold' && -budgeted.spare! > 10_000)
        const { low, spare } = shownBy(units, budgeted)
        const beyond = -budgeted.spare! / perUnit(units)
        expect(budgeted.limits![0] / perUnit(units) - low).toBeLessThanOrEqual(1.5 * beyond + 3e-6)
        expect(spare!).toBeLessThanOrEqual(1.5 * beyond + 3e-6)
        expect(spare!).toBeGreaterThanOrEqual(beyond - 1e-9)
      }),
      { numRuns: 2000 },
    )
  })

  it('keep the digits that tell 4.34985 from its limit of 4.35', () => {
    const budgeted: Budgeted = {
      id: 'far',
      planned: 4.4959 * MM,
      low: 4.34985 * MM,
      high: 4.642 * MM,
      rss: 0.1 * MM,
      limits: [4.35 * MM, 4.65 * MM],
      verdict: 'may not hold',
      spare: -0.00015 * MM,
      worstCause: 'layout',
    }
    expect(shownBy('mm', budgeted)).toMatchObject({ low: 4.3498, spare: 0.0002 })
    const job = { units: 'mm', features: [], lathe: plan().lathe } as unknown as Job
    expect(told(warningOf(job, { ...feature, budget: [budgeted] }, 0).say, 'mm')).toContain(
      'far edge from end 4.3498 to 4.642, drawn 4.35',
    )
  })
})
