import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../runs.ts'
import { sheetOf } from './examine.ts'
import { jobs } from './jobs.ts'
import { halfOfTheJobs } from './random-jobs.ts'
import { foundOut, tooDeep } from './spoil.ts'

describe('random jobs, the first half', () => {
  halfOfTheJobs(19_420_817)

  it('are found out when the infeeds of a good sheet are three marks more', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const made = sheetOf(job.text)
        const spoiled = made.ok ? tooDeep(made.sheet) : null
        fc.pre(spoiled !== null)
        expect(foundOut(job, spoiled!)).not.toEqual([])
      }),
      { numRuns: runs(20), seed: 19_420_818 },
    )
  })
})
