import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { examine, sheetOf, summaryOf, tallies } from './examine.ts'
import { jobs } from './jobs.ts'
import { foundOut, tooDeep, withoutTakeUps } from './spoil.ts'

const campaign = process.env.GROOVEWRIGHT_CAMPAIGN
const runs = campaign === undefined ? 2_000 : Math.max(Number(campaign) || 0, 20_000)
const counts = tallies()

describe('random jobs', () => {
  it(`are each planned and proven, or refused with a reason (${runs} jobs)`, {
    timeout: campaign === undefined ? 240_000 : 3_600_000,
  }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        expect(examine(job, counts)).toEqual([])
      }),
      { numRuns: runs, seed: 19_420_817 },
    )
  })

  it('are mostly jobs that can be cut, and not only those', () => {
    expect(counts.planned).toBeGreaterThan(counts.features / 2)
    expect(counts.refused.size).toBeGreaterThan(3)
  })

  it('are found out when the infeeds of a good sheet are three marks more', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const made = sheetOf(job.text)
        const spoiled = made.ok ? tooDeep(made.sheet) : null
        fc.pre(spoiled !== null)
        expect(foundOut(job, spoiled!)).not.toEqual([])
      }),
      { numRuns: 60, seed: 19_420_818 },
    )
  })

  it('are found out when a good sheet no longer takes up the lost motion before a zero', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const made = sheetOf(job.text)
        const spoiled = made.ok ? withoutTakeUps(made.sheet) : null
        fc.pre(spoiled !== null)
        expect(foundOut(job, spoiled!)).not.toEqual([])
      }),
      { numRuns: 40, seed: 19_420_819 },
    )
  })

  afterAll(() => console.log(summaryOf(counts)))
})
