import { expect, it } from 'vitest'
import type { Shop } from '../../src/finish/measured.ts'
import { around, NEARBY } from '../../src/finish/nearby.ts'
import { begin, groove, out } from '../replay/shop.ts'

it('readings nearby are tried from the nearest on, the shallower of two first, and never the middle', () => {
  const shop = { operation: groove(1, 0.2, 0.1, [...begin, out(-50)]), stop: { at: 3 } } as unknown as Shop
  expect(around(shop, { deeper: 40, across: 7 }).map(({ deeper, across }) => [deeper - 40, across])).toEqual(
    [-1, 1, -2, 2, -3, 3].map((deep) => [deep, 7]),
  )
  expect(NEARBY).toBe(3)
})
