import { expect, it } from 'vitest'
import { replay } from '../../src/replay/replay.ts'
import { bar, bench, neck, toInch } from './shop.ts'

it('a cross-feed set to zero without a touch is a fault, told once, and the rest is replayed as if it had touched', () => {
  const moves = neck.moves.filter(({ action }) => action !== 'touch-off')
  const dimensions = (['width', 'depth'] as const).map((id) => ({ id, aim: 0, limits: null }))
  const { operations, faults } = replay(bench, bar([1.5, 4]), [{ ...neck, dimensions, moves }])
  expect(faults.filter(({ say }) => say === 'The cross-feed is set to zero without a touch.')).toHaveLength(1)
  expect(operations[0]!.sizes.map(({ surely }) => toInch(surely))).toEqual([
    expect.closeTo(0.156, 6),
    expect.closeTo(0.072, 6),
  ])
})
