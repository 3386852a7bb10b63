import { expect, it } from 'vitest'
import type { Shop } from '../../src/finish/measured.ts'
import { around, NEARBY } from '../../src/finish/nearby.ts'
import { across, begin, feed, groove, out } from '../replay/shop.ts'

it('readings nearby are tried from the nearest on, the shallower of two first, and never the middle', () => {
  const shop = { operation: groove(1, 0.2, 0.1, [...begin, out(-50)]), stop: { at: 3 } } as unknown as Shop
  expect(around(shop, { deeper: 40, across: 7 }).map(({ deeper, across }) => [deeper - 40, across])).toEqual(
    [-1, 1, -2, 2, -3, 3].map((deep) => [deep, 7]),
  )
  expect(NEARBY).toBe(3)
})

it('of two equally near and equally deep, where the width is fed across, the narrower comes first', () => {
  const operation = groove(1, 0.2, 0.1, [...begin, feed(100), across(52), out(-50)])
  const shop = { operation, stop: { at: 3 } } as unknown as Shop
  const tried = around(shop, { deeper: 40, across: 7 }).map(({ deeper, across }) => [deeper - 40, across - 7])
  expect(tried.slice(0, 8)).toEqual([
    ...[
      [-1, 0],
      [0, -1],
      [0, 1],
      [1, 0],
    ],
    ...[
      [-2, 0],
      [-1, -1],
      [-1, 1],
      [0, -2],
    ],
  ])
  expect(tried).toHaveLength(48)
})
