import { expect, it } from 'vitest'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { replay } from '../../src/replay/replay.ts'
import { bar, bench, inch, neck, toInch } from './shop.ts'

const sizesOf = (operation: Operation) => replay(bench, bar([1.5, 4]), [operation])
const TURNED = new Set(['feed-in', 'back-out', 'shift', 'go-past', 'return', 'feed-across'])

it('a move that names no slide turns the one that it is usual for', () => {
  const moves = neck.moves.map((move): Move => {
    const { slide: _, ...unnamed } = move
    return TURNED.has(move.action) ? unnamed : move
  })
  expect(moves.filter(({ action, slide }) => TURNED.has(action) && slide === undefined).length).toBeGreaterThan(3)
  const [named, unnamed] = [sizesOf(neck), sizesOf({ ...neck, moves })]
  expect(unnamed.faults).toEqual([])
  expect(unnamed.operations[0]!.sizes).toEqual(named.operations[0]!.sizes)
})

it('a cut that ends where the region begins is not measured as the groove', () => {
  const past = neck.region.to
  const region = { from: past, to: past + inch(0.1) }
  const { operations } = sizesOf({ ...neck, region })
  const near = operations[0]!.sizes.map(({ surely }) => surely)
  expect(near.map(toInch).every((size) => Number.isNaN(size) || size === 0)).toBe(true)
  expect(toInch(sizesOf(neck).operations[0]!.sizes[1]!.surely)).toBeCloseTo(0.072, 6)
})
