// Source: MS3215 as in Machinery's Handbook, 31st ed. (2020), p. 1919 (grade A; ms3215_botr: shafts 0.312-0.438, bottom radius 0.010 at the most;
// ms3215_wtol +.003 -0) on the MS16632 groove of p. 1917 (ms16632_0_375: shaft .375, groove .335, .029 wide). The floor between the corners is shorter than
// a corner: a tool .029 wide with corners of .010 leaves .010 in both whatever the compound's mark; once they measured .0372.
import { expect, it } from 'vitest'
import { planned } from './whole-job.ts'

const job = (shaft: number, groove: number, corner: string) => ({
  units: 'inch' as const,
  part: `diameter: ${shaft}, length: 1`,
  tool: 'shape: square, width: 0.029, corner-radius: 0.010, reach: 0.1',
  feature: `kind: groove, near: 0.25, width: 0.029 +0.003 -0, bottom-diameter: ${groove}, corner-radius: ${corner}`,
})

it.each([
  [0.375, 0.335],
  [0.406, 0.364],
  [0.437, 0.393],
])('shaft %d: a tool with the greatest radius leaves that radius', (shaft, groove) => {
  const { size } = planned(job(shaft, groove, '0.010 max'))
  expect(size('cornerRadius').planned).toBeCloseTo(0.01, 6)
})

// Worst case .0593 of corners that a tool of .010 leaves; neighbors of nearly the same size come to .0104.
it('does not give a worst case far from the tool (shaft .219, tool .010)', () => {
  const { size } = planned(job(0.219, 0.193, '0.010 max'))
  expect(size('cornerRadius').high).toBeLessThan(0.012)
})
