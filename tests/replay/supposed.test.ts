import { expect, it } from 'vitest'
import { replay } from '../../src/replay/replay.ts'
import { bar, bench, inch, move, neck, toInch } from './shop.ts'

it('a cross-feed set to zero without a touch is a fault, told once, and the rest is replayed as if it had touched', () => {
  const moves = neck.moves.filter(({ action }) => action !== 'touch-off')
  const dimensions = (['width', 'depth'] as const).map((id) => ({ id, aim: 0, limits: null }))
  const { operations, faults } = replay(bench, bar([1.5, 4]), [{ ...neck, dimensions, moves }])
  expect(faults.filter(({ say }) => say === 'The cross-feed is set to zero without a touch.')).toHaveLength(1)
  expect(operations[0]!.sizes.map(({ surely }) => toInch(surely))).toEqual([
    expect.closeTo(0.156, 6),
    expect.closeTo(0.072, 6),
  ])
  // Nor is it told again where the dial is set to zero a second time.
  const twice = moves.flatMap((one) => (one.action === 'zero' && one.slide === 'cross-feed' ? [one, one] : [one]))
  const again = replay(bench, bar([1.5, 4]), [{ ...neck, dimensions, moves: twice }])
  expect(again.faults.filter(({ say }) => say === 'The cross-feed is set to zero without a touch.')).toHaveLength(1)
})

it('a cross-feed set to zero with no work under the tool counts from the diameter that it was to touch', () => {
  const placing = { point: 'tailstock-corner', against: { line: inch(5) } } as const
  const moves = [move('align'), move('zero', 'cross-feed')]
  const operation = { ...neck, placing, moves, touch: { diameter: inch(1.2), at: null } }
  const { zero } = replay(bench, bar([1.5, 4]), [operation]).operations[0]!
  expect([toInch(zero.fromEnd), toInch(zero.diameter)]).toEqual([expect.closeTo(5, 9), expect.closeTo(1.2, 9)])
})

it('a compound set to zero before the tool was brought is replayed as if it had been', () => {
  const moves = neck.moves.filter(({ action }) => action !== 'align')
  const dimensions = (['near', 'width'] as const).map((id) => ({ id, aim: 0, limits: null }))
  const { operations } = replay(bench, bar([1.5, 4]), [{ ...neck, dimensions, moves }])
  expect(operations[0]!.sizes.map(({ surely }) => toInch(surely))).toEqual([
    expect.closeTo(1.125, 6),
    expect.closeTo(0.156, 6),
  ])
})
