import { expect, it } from 'vitest'
import type { Shop } from '../../src/finish/measured.ts'
import { standingAlong } from '../../src/finish/measured.ts'
import { pulley, stepped } from '../replay/operations.ts'
import { inch, toInch } from '../replay/shop.ts'

it('a V that is corrected down its flank moves along by the change of depth over the tangent of the swivel', () => {
  // .200 on the diameter is .100 in; down a line at 60 degrees from the axis it is .100 / tan 60 = .05774 along.
  const swung = (by: 'compound' | 'cross-feed', angle: number, of = pulley) =>
    standingAlong({ operation: { ...of, angle }, stop: { by } } as unknown as Shop, inch(0.2))
  const moved = swung('compound', 60)
  const along = 0.1 / Math.sqrt(3)
  expect(toInch(moved.region.from - pulley.region.from)).toBeCloseTo(along, 9)
  expect(toInch(moved.region.to - pulley.region.to)).toBeCloseTo(along, 9)
  expect(moved.wanted.map(({ from }, i) => toInch(from - pulley.wanted[i]!.from))).toEqual(
    pulley.wanted.map(() => expect.closeTo(along, 9)),
  )
  const [flank, was] = [moved.wanted[0]!.curve, pulley.wanted[0]!.curve]
  if (flank.kind !== 'line' || was.kind !== 'line') throw new Error('no flank')
  expect([flank.z0 - was.z0, flank.z1 - was.z1].map(toInch)).toEqual([
    expect.closeTo(along, 9),
    expect.closeTo(along, 9),
  ])
  expect([flank.d0, flank.d1]).toEqual([was.d0, was.d1])
  // The other way on the other side; an arc goes with its center; straight in nothing moves.
  expect(toInch(swung('compound', -60).region.from - pulley.region.from)).toBeCloseTo(-along, 9)
  const [arc, arcWas] = [swung('compound', 60, stepped).wanted[0]!.curve, stepped.wanted[0]!.curve]
  if (arc.kind !== 'arc' || arcWas.kind !== 'arc') throw new Error('no arc')
  expect(toInch(arc.zc - arcWas.zc)).toBeCloseTo(along, 9)
  expect(swung('cross-feed', 0).region).toEqual(pulley.region)
})
