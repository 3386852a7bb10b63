import { expect, it } from 'vitest'
import type { StepCuts } from '../../src/moves/cuts.ts'
import type { Request } from '../../src/sequence/request.ts'
import { cutAt, metalUnder, type Profile, profileOf } from '../../src/sequence/steps-metal.ts'

/** Points a unit apart, and an edge over four of them whose ends stand back by 1. */
const profile = (): Profile => ({
  from: 0,
  step: 1,
  deep: new Float64Array(10),
  edge: { from: 0, to: 3, deepest: 0 },
  edgeAt: (u) => (u === 0 || u === 3 ? -1 : 0),
})

it('an edge cuts at every point under it, to both of its ends', () => {
  const work = profile()
  cutAt(work, 2, 5)
  expect([...work.deep]).toEqual([0, 0, 4, 5, 5, 4, 0, 0, 0, 0])
  cutAt(work, 5, 3)
  expect([...work.deep]).toEqual([0, 0, 4, 5, 5, 4, 3, 3, 2, 0])
})

it('and meets the highest metal under it, at its very ends too', () => {
  const work = profile()
  work.deep.fill(9)
  work.deep[5] = 2
  expect(metalUnder(work, 2, 8)).toBe(5)
  expect(metalUnder(work, 5, 8)).toBe(5)
  expect(metalUnder(work, 3, 8)).toBe(6)
  expect(metalUnder(work, 6, 8)).toBe(-1)
})

it('the work begins where it begins: before that there is nothing to meet', () => {
  const request = { edge: { from: 0, to: 47, deepest: 0 } } as Request
  const { deep, from, step } = profileOf(request, {
    first: 0,
    last: 2000,
    workFrom: 10,
    edgeAt: () => 0,
  } as unknown as StepCuts)
  expect([from, step]).toEqual([0, 1])
  expect([deep[9], deep[10], deep[2047]]).toEqual([Number.POSITIVE_INFINITY, 0, 0])
})
