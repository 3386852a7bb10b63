import { expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { examplePlans } from '../print/examples.ts'

/** A hollow drawn by its width is still to cut, or scrap, where its bottom makes the chord of a limit: h = r − √(r² − c²/4) (plane geometry). */
it.each([
  ['05-bearing-bush.yaml', 0.09375, [0.14625, 0.16625]],
  ['14-whole-screw.yaml', 0.09375, [0.14, 0.16]],
])('a hollow of %s goes by the limits of its width, told as its bottom', (name, radius, limits) => {
  const { steps, features } = sheetFor(examplePlans().find(([one]) => one === name)![1])
  const hollow = features.findIndex(({ kind }) => kind === 'concave radius')
  const left = steps.find(({ feature, metalLeft }) => feature === hollow && metalLeft !== undefined)!.metalLeft!
  const [size] = left.sizes
  const twice = limits.map((chord) => 2 * (radius - Math.sqrt(radius ** 2 - chord ** 2 / 4)))
  expect([size!.measure, size!.when]).toEqual(['outsideLessBottom', 'under'])
  expect(size!.limit.value).toBeCloseTo(twice[0]!, 6)
  expect(size!.past!.value).toBeCloseTo(twice[1]!, 6)
})
