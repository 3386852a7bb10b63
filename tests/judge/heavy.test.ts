import { describe, expect, it } from 'vitest'
import { heavyCuts } from '../../src/judge/heavy.ts'
import type { Operation } from '../../src/moves/operation.ts'
import type { OperationTrace } from '../../src/moves/trace.ts'
import { across, feed, groove, out } from '../replay/shop.ts'

/** What each move takes, in its place in the list; null takes nothing. */
const moves = [feed(1), out(-50), feed(2), across(8), out(-50), across(0)]
const list = (takes: readonly (number | null)[], passes?: Operation['passes']) => ({
  operation: { ...groove(1, 0.25, 0.1, moves), ...(passes === undefined ? {} : { passes }) } as Operation,
  trace: {
    taken: Object.fromEntries(takes.flatMap((one, i) => (one === null ? [] : [[i, one]]))),
  } as unknown as OperationTrace,
})
const told = (takes: readonly (number | null)[], sheet: ReturnType<typeof list>) =>
  heavyCuts(list(takes), sheet).map(({ move, most, of, across: sideways }) => [move, most, of, sideways])

describe('a cut that is too heavy', () => {
  it('goes by the infeed of the job straight in, and by what roughing leaves and one more infeed across', () => {
    const sheet = list([4000, null, 3000, 9000], { infeed: 5000, leave: 6000 })
    expect(told([6000, null, 6000, 12_000, null, 12_000], sheet)).toEqual([])
    expect(told([6001, null, 6000, 12_001, null, 12_000], sheet)).toEqual([
      [0, 5000, 'infeed', false],
      [3, 11_000, 'infeed', true],
    ])
  })
  it('is never what the sheet itself takes, nor half as much again', () => {
    const sheet = list([9000, null, 3000, 30_000], { infeed: 5000, leave: 6000 })
    expect(told([14_500, null, null, 46_000], sheet)).toEqual([])
    expect(told([14_501, null, null, 46_001], sheet)).toEqual([
      [0, 9000, 'sheet', false],
      [3, 30_000, 'sheet', true],
    ])
    // A nanometer over the infeed is the infeed.
    expect(told([7000, null, null, null], list([6000], { infeed: 5000, leave: 6000 }))).toEqual([
      [0, 5000, 'infeed', false],
    ])
  })
  it('goes by the sheet alone where the job sets nothing, and by nothing where the sheet cuts nothing so', () => {
    const sheet = list([4000, null, 2000])
    expect(told([7000, null, null, 99_000], sheet)).toEqual([])
    expect(told([null, null, 7001, 99_000], sheet)).toEqual([[2, 4000, 'sheet', false]])
    expect(told([9_999_999], list([]))).toEqual([])
  })
  it('without an infeed goes across by twice what is left, and straight in by the sheet', () => {
    const sheet = list([4000, null, null, 2000], { infeed: null, leave: 6000 })
    expect(told([7001, null, null, 13_000], sheet)).toEqual([[0, 4000, 'sheet', false]])
    expect(told([7000, null, null, 13_001], sheet)).toEqual([[3, 12_000, 'infeed', true]])
  })
  it('is told in the order of the moves', () => {
    const sheet = list([1000, null, null, 1000], { infeed: 1000, leave: 1000 })
    expect(told([9000, null, 9000, 9000, null, 9000], sheet).map(([move]) => move)).toEqual([0, 2, 3, 5])
  })
})
