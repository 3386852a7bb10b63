import { describe, expect, it } from 'vitest'
import type { Bench } from '../../src/features/draft.ts'
import type { ConcaveFeature, CornerFeature } from '../../src/features/feature.ts'
import { concaveSteps } from '../../src/features/radius/step-concave.ts'
import { cornerSteps } from '../../src/features/radius/step-corner.ts'
import type { Dial } from '../../src/lathe/lathe.ts'
import type { StepCuts } from '../../src/moves/cuts.ts'
import { stepPlaces } from '../../src/sequence/steps-places.ts'
import type { RoundTool } from '../../src/tools/tool.ts'
import { INCH } from '../../src/units/length.ts'

const MARK = INCH / 1000
const dial: Dial = {
  kind: 'dial',
  units: 'inch',
  graduation: MARK,
  perTurn: INCH / 10,
  reads: 'depth',
  backlash: 0,
  readTo: 1,
}
const dials = { along: dial, inward: dial }
const feature = (cusp: number) => ({ cutting: { cusp, leave: null, infeed: null } }) as unknown as ConcaveFeature

const steps = (cusp: number, width = 0.12) => {
  const [R, r] = [0.08 * INCH, 0.05 * INCH]
  const depth = R - Math.sqrt(R ** 2 - (width * INCH) ** 2 / 4)
  return concaveSteps({ units: 'inch' } as Bench, feature(cusp * INCH), {
    R,
    r,
    edge: 2 * r,
    width: width * INCH,
    depth,
  })
}

/** As deep as the mark nearest to the form. */
const rounded = (cuts: StepCuts, count: number): number => Math.round(cuts.depthAt(count * MARK) / MARK) * MARK

/** The fewest places by trying every way from mark to mark, nearest first. */
const fewestByHand = (cusp: number): number => {
  const cuts = steps(cusp)
  const [low, high] = [Math.floor(cuts.first / MARK + 1e-6), Math.ceil(cuts.last / MARK - 1e-6)]
  const least = new Map([[low, 1]])
  for (let to = low + 1; to <= high; to++)
    for (let from = low; from < to; from++) {
      const ridge = cuts.outside(cuts.between(from * MARK, to * MARK, [rounded(cuts, from), rounded(cuts, to)]))
      const before = least.get(from) ?? Number.POSITIVE_INFINITY
      if (ridge <= cusp * INCH) least.set(to, Math.min(least.get(to) ?? Number.POSITIVE_INFINITY, before + 1))
    }
  return least.get(high)!
}

describe('places of a stepped form', () => {
  it.each([0.001, 0.0015, 0.002, 0.004])('are the fewest whole marks that keep a cusp of %f', (cusp) => {
    const { counts, ridge } = stepPlaces(steps(cusp), dials)
    expect(counts.length).toBe(fewestByHand(cusp))
    expect(ridge).toBeLessThanOrEqual(cusp * INCH)
    expect(counts.every(Number.isInteger)).toBe(true)
  })
  it('are the fewest with the lowest ridge that the marks give, where no marks keep the cusp', () => {
    const small = stepPlaces(steps(0.0001), dials)
    expect(small.ridge).toBeGreaterThan(0.0001 * INCH)
    expect(small.exact).toBeLessThanOrEqual(0.0001 * INCH)
    // To ask for what it says comes to the same: no choice of marks is better, and none of as many marks.
    const asked = stepPlaces(steps((small.ridge + 1) / INCH), dials)
    expect(asked.counts).toEqual(small.counts)
    expect(stepPlaces(steps((small.ridge - 1000) / INCH), dials).ridge).toBe(small.ridge)
  })
  it('reach both edges of the form, and no further than the tool can touch it', () => {
    const narrow = stepPlaces(steps(0.0005), dials).counts
    // (R − r)·W / 2R = 0.0225: the mark beyond.
    expect([narrow[0], narrow.at(-1)]).toEqual([-23, 23])
    const half = stepPlaces(steps(0.0005, 0.16), dials).counts
    expect([half[0], half.at(-1)]).toEqual([-30, 30])
  })
  it.each([
    ['inch', 0.066 * INCH, 0.0005 * INCH, 0.5],
    ['mm', 2.15e9, 0.01e9, 0.5],
    ['mm', 2.15e9, 0.01e9, 1],
  ] as const)(
    'keep the cusp around a corner (%s, radius %f) on dials whose mark is twice as much',
    (units, r, cusp, readTo) => {
      const metric: Dial = { ...dial, units: 'mm', graduation: 20_000_000, perTurn: 2_000_000_000 }
      const stepper = { tool: { shape: 'round' } as RoundTool, r, beyond: r }
      const cuts = cornerSteps({ units } as Bench, feature(cusp) as unknown as CornerFeature, r, stepper)
      const { ridge, counts } = stepPlaces(cuts, { along: { ...metric, readTo }, inward: metric })
      expect(ridge).toBeLessThanOrEqual(cusp)
      expect(counts.length).toBeLessThan(12)
    },
  )
})
