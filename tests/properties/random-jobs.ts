import fc from 'fast-check'
import { afterAll, expect, it } from 'vitest'
import { examine, summaryOf, tallies } from './examine.ts'
import { jobs } from './jobs.ts'
import { SORTS } from './sorts.ts'

const campaign = process.env.GROOVEWRIGHT_CAMPAIGN
/** Half of all: two files draw them, so that two cores work. */
const runs = (campaign === undefined ? 500 : Math.max(Number(campaign) || 0, 20_000)) / 2

/** One half of the random jobs, from its own seed, with what came of them. */
export function halfOfTheJobs(seed: number): void {
  const counts = tallies()

  it(`are each planned and proven, or refused with a reason (${runs} jobs)`, {
    timeout: campaign === undefined ? 240_000 : 5_400_000,
  }, () => {
    fc.assert(
      fc.property(jobs, (job) => {
        expect(examine(job, counts)).toEqual([])
      }),
      { numRuns: runs, seed },
    )
  })

  it('are mostly jobs that can be cut, and not only those', () => {
    expect(counts.planned).toBeGreaterThan(counts.features / 2)
    expect(counts.refused.size).toBeGreaterThan(3)
  })

  it('have tables of which rows were followed, and sizes whose worst case was worked out', () => {
    expect(counts.rows).toBeGreaterThan(runs / 10)
    expect(counts.ends).toBeGreaterThan(runs / 20)
  })

  it.each(SORTS)('hold features of every sort that are planned: %s', (sort) => {
    expect(counts.sorts.get(sort) ?? 0).toBeGreaterThanOrEqual(FEW)
  })

  afterAll(() => console.log(summaryOf(counts)))
}

/** Of the rarest sort so many planned features are drawn at least. */
const FEW = campaign === undefined ? 1 : 3
