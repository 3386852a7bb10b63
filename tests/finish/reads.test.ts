import { expect, it } from 'vitest'
import { worthReading } from '../../src/finish/reads.ts'

it('a size is corrected only by a reading that is surer than the cut, or where nobody said with what it is read', () => {
  const by = (within: number) => ({ with: 'micrometer', within, reads: 1 }) as const
  expect([worthReading(by(4), 5), worthReading(by(5), 5), worthReading(by(6), 5)]).toEqual([true, false, false])
  expect([worthReading(null, 5), worthReading(undefined, 5)]).toEqual([false, true])
})
