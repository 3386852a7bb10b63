import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../runs.ts'
import { sheetOf } from './examine.ts'
import { jobs } from './jobs.ts'
import { halfOfTheJobs } from './random-jobs.ts'
import { foundOut, withoutTakeUps, wrongCorner } from './spoil.ts'

describe('random jobs, the second half', () => {
  halfOfTheJobs(19_420_820)

  it('are found out when a good sheet no longer takes up the lost motion before a zero', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const made = sheetOf(job.text)
        const spoiled = made.ok ? withoutTakeUps(made.sheet) : null
        fc.pre(spoiled !== null)
        expect(foundOut(job, spoiled!)).not.toEqual([])
      }),
      { numRuns: runs(12), seed: 19_420_819 },
    )
  })

  it('are found out when the other corner of the tool is named for its line', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const made = sheetOf(job.text)
        const spoiled = made.ok ? wrongCorner(made.sheet) : null
        fc.pre(spoiled !== null)
        expect(foundOut(job, spoiled!).join()).toContain('told is')
      }),
      { numRuns: runs(12), seed: 19_420_821 },
    )
  })
})
