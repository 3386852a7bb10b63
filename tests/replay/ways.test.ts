import { describe, expect, it } from 'vitest'
import type { Interval } from '../../src/moves/trace.ts'
import type { Bench } from '../../src/replay/bench.ts'
import { waysOf } from '../../src/replay/ways.ts'

/** The compound is swung so that one of it is 3/5 along and 4/5 in; all in plain numbers. */
const bench = { way: { z: 0.6, d: 0.8 }, fromEnd: 1000, depth: 100 } as unknown as Bench
const ends = (carriage: Interval, compound: Interval, cross: number) =>
  waysOf(bench, { carriage, compound, cross }).map((way) => way.map(({ z, d }) => [z, d]))

describe('the paths around all places where a tool may be', () => {
  it('are one point where both slides are known', () => {
    expect(ends([5, 5], [-10, -10], 7)).toEqual([
      [
        [999, 99],
        [999, 99],
      ],
    ])
  })
  it('are one line where one of them varies', () => {
    expect(ends([5, 5], [-20, -10], 7)).toEqual([
      [
        [993, 91],
        [999, 99],
      ],
    ])
    expect(ends([5, 25], [-10, -10], 7)).toEqual([
      [
        [999, 99],
        [1019, 99],
      ],
    ])
  })
  it('are the four sides of all that is possible where both vary, on either side of the zero', () => {
    expect(ends([5, 25], [-20, -10], 7)).toEqual([
      [
        [993, 91],
        [1013, 91],
      ],
      [
        [1013, 91],
        [1019, 99],
      ],
      [
        [1019, 99],
        [999, 99],
      ],
      [
        [999, 99],
        [993, 91],
      ],
    ])
    expect(ends([5, 25], [10, 20], 7)).toHaveLength(4)
  })
})
