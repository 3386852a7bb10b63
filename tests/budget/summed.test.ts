import { describe, expect, it } from 'vitest'
import type { CauseName } from '../../src/budget/budgeted.ts'
import { type Effect, summed } from '../../src/budget/summed.ts'
import type { Instrument, WantedDimension } from '../../src/moves/operation.ts'
import type { Size } from '../../src/moves/trace.ts'

/** All worked out by hand, from numbers put down here; nothing is replayed. */
const size = (surely: number | null, possibly = surely): readonly Size[] => [{ id: 'depth', surely, possibly }]
const effect = (name: CauseName, ways: readonly number[], of?: string, every = false): Effect => ({
  name,
  sizes: ways.map((one) => size(one)),
  ...(of === undefined ? {} : { of, every }),
})
const wanted = (id: Instrument, limits: readonly [number, number] | null = null): WantedDimension => ({
  id,
  aim: 1e6,
  limits,
})
const sum = (effects: readonly Effect[], id: Instrument = 'depth', limits: readonly [number, number] | null = null) =>
  summed(wanted(id, limits), 0, size(1e6), effects)

describe('the sum of what all errors do', () => {
  it('adds what each takes and what each adds', () => {
    const { planned, low, high, rss, worstCause } = sum([
      effect('touch-off', [1e6 - 3000, 1e6 + 1000]),
      effect('runout', [1e6 + 4000, 1e6 - 2000]),
    ])
    expect([planned, low, high]).toEqual([1e6, 1e6 - 5000, 1e6 + 5000])
    // √(3² + 4²): of each the worse side.
    expect(rss).toBeCloseTo(5000, 6)
    expect(worstCause).toBe('runout')
  })
  it('takes nothing off where an error only adds', () => {
    const { low, high } = sum([effect('touch-off', [1e6 + 500, 1e6 + 1000])])
    expect([low, high]).toEqual([1e6, 1e6 + 1000])
  })
  it('counts the readings of one slide all together where that is worse than each alone', () => {
    const alone = [
      effect('reading-cross-feed', [1e6 - 500, 1e6], 'cross-feed'),
      effect('reading-cross-feed', [1e6, 1e6 + 500], 'cross-feed'),
    ]
    const { low, high, rss } = sum([
      ...alone,
      effect('reading-cross-feed', [1e6 - 2000, 1e6 + 300], 'cross-feed', true),
    ])
    expect([low, high]).toEqual([1e6 - 2000, 1e6 + 500])
    expect(rss).toBeCloseTo(2000, 6)
    const other = sum([...alone, effect('reading-cross-feed', [1e6 - 400, 1e6 + 700], 'cross-feed', true)])
    expect([other.low, other.high]).toEqual([1e6 - 500, 1e6 + 700])
    expect(other.rss).toBeCloseTo(Math.hypot(500, 500), 6)
  })
  it('adds the readings of one slide by chance where they do no more together than each alone', () => {
    const each = effect('reading-cross-feed', [1e6 - 500, 1e6], 'cross-feed')
    const { low, rss } = sum([each, each, effect('reading-cross-feed', [1e6 - 1000, 1e6], 'cross-feed', true)])
    expect(low).toBe(1e6 - 1000)
    expect(rss).toBeCloseTo(Math.hypot(500, 500), 6)
  })
  it('takes what each adds by chance, and what all add together if that is more than the sum of each', () => {
    const each = [300, 400].map((up) => effect('reading-compound', [1e6, 1e6 + up], 'compound'))
    const rss = (every: number) => sum([...each, effect('reading-compound', [1e6, 1e6 + every], 'compound', true)]).rss
    expect(rss(700)).toBeCloseTo(500, 9)
    expect(rss(900)).toBeCloseTo(900, 9)
  })
  it('is nothing at all where no reading does anything', () => {
    const { low, high, rss } = sum([effect('reading-compound', [1e6, 1e6], 'compound', true)])
    expect([low, high, rss]).toEqual([1e6, 1e6, 0])
  })
  it('counts an error that only one size shows for that size alone', () => {
    const step = { ...effect('reading-cross-feed', [1e6 - 500, 1e6 + 500]), only: 'flatness' }
    expect(sum([step], 'flatness').high).toBe(1e6 + 500)
    expect(sum([step], 'depth').high).toBe(1e6)
  })
  it('keeps slides apart, and counts causes of one name together', () => {
    const { low, worstCause } = sum([
      effect('reading-compound', [1e6 - 600, 1e6], 'compound'),
      effect('reading-cross-feed', [1e6 - 700, 1e6], 'cross-feed'),
      effect('touch-off', [1e6 - 400, 1e6]),
      effect('touch-off', [1e6 - 400, 1e6]),
    ])
    expect(low).toBe(1e6 - 2100)
    expect(worstCause).toBe('touch-off')
  })
  it('names no cause where nothing does anything', () => {
    expect(sum([effect('touch-off', [1e6, 1e6])]).worstCause).toBe('none')
    expect(sum([]).worstCause).toBe('none')
  })
  it('a flatness and a root are never less than nothing; other sizes may be', () => {
    const huge = [effect('touch-off', [-1000, 1e6])]
    expect(sum(huge, 'flatness').low).toBe(0)
    expect(sum(huge, 'root').low).toBe(0)
    expect(sum(huge, 'near').low).toBe(-1000)
  })
  it('starts from both ends where the plan leaves some backlash to decide', () => {
    const { planned, low, high, rss } = summed(wanted('depth'), 0, size(1e6 + 200, 1e6 - 200), [
      { name: 'touch-off', sizes: [size(1e6 - 300, 1e6 + 100), size(1e6 + 200, 1e6 - 200)] },
    ])
    // The least goes from −200 to −300; the most stays at +200.
    expect([planned, low, high]).toEqual([1e6, 1e6 - 300, 1e6 + 200])
    expect(rss).toBeCloseTo(100 + 200, 6)
  })
  it('a size that one of the ways does not have takes nothing away', () => {
    const { low, high } = sum([{ name: 'touch-off', sizes: [size(null), size(1e6 + 500)] }])
    expect([low, high]).toEqual([1e6, 1e6 + 500])
  })
})

describe('a verdict', () => {
  const of = (limits: readonly [number, number], id: Instrument = 'depth') =>
    sum([effect('touch-off', [1e6 - 5000, 1e6 + 3000])], id, limits)
  it('has so much to spare as there is on the worse side', () => {
    expect(of([1e6 - 9000, 1e6 + 9000])).toMatchObject({ verdict: 'holds', spare: 4000 })
    expect(of([1e6 - 90_000, 1e6 + 4000])).toMatchObject({ verdict: 'holds', spare: 1000 })
    expect(of([1e6 - 1000, 1e6 + 9000])).toMatchObject({ verdict: 'may not hold', spare: -4000 })
    expect(sum([]).verdict).toBe('no limits given')
    expect(sum([]).spare).toBe(null)
  })
  it('a limit missed by a nanometer of arithmetic is met, of an angle by next to nothing', () => {
    expect(of([1e6 - 4000, 1e6 + 9000]).verdict).toBe('holds')
    expect(of([1e6 - 3999, 1e6 + 9000]).verdict).toBe('may not hold')
    expect(of([1e6 - 4000, 1e6 + 9000], 'angle').verdict).toBe('may not hold')
  })
  it('a size that the form does not have holds nothing', () => {
    const none = summed(wanted('depth', [0, 1]), 0, size(null), [effect('touch-off', [1, 2])])
    expect(none).toMatchObject({ planned: Number.NaN, spare: null, verdict: 'may not hold' })
    expect(none.worstCause).toBe('no-size')
  })
})
