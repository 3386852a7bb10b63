import { expect, test } from 'vitest'
import { INCH, MM } from '../../src/units/length.ts'
import { readMoves } from '../../src/written/written.ts'
import { examplePlans } from '../print/examples.ts'
import { shopOf } from './shop.ts'

const [, plan] = examplePlans().find(([name]) => name.startsWith('17-'))!
const shop = shopOf(plan)
const row = (text: string, units: 'inch' | 'mm' = 'inch') =>
  readMoves(`feature,action,slide,reading,place\n1,${text}\n`, 'list.csv', { ...shop, units })
const codes = (text: string) => row(text).diagnostics.map(({ code }) => code)

test('a place by eye is read from the free end, in the units of the job', () => {
  expect(row('move-carriage,,,1 1/8').operations![0]!.moves[0]).toMatchObject({
    slide: 'carriage',
    place: 1.125 * INCH,
  })
  expect(row('feed-across,carriage,,28.5', 'mm').operations![0]!.moves[0]!.place).toBe(28.5 * MM)
})

test('only a carriage is moved by eye, and then it has no reading', () => {
  expect(codes('feed-in,cross-feed,,1.125')).toEqual(['moves-place'])
  expect(codes('lock,,,1.125')).toEqual(['moves-place'])
  expect(codes('zero,carriage,,1.125')).toEqual(['moves-place'])
  expect(codes('move-carriage,,0.1,1.125')).toEqual(['moves-place'])
  expect(codes('move-carriage,,,near')).toEqual(['moves-place'])
})
