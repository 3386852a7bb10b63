import { expect, it } from 'vitest'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { replay } from '../../src/replay/replay.ts'
import { bar, begin, bench, feed, groove, move, out, square, toInch } from './shop.ts'

/** A tool of .050 at 50 stands with its far corner at 1.225. That is the mark nearest to the wall, which stands at 1.2252. */
const plunge = (place: number, deep: number): readonly Move[] => [
  move('go-past', 'compound', place - 20),
  move('return', 'compound', place),
  feed(deep),
  out(-50),
]
const bare = (width: number, ...roughed: readonly number[]) => {
  const operation: Operation = {
    ...groove(1.125, width, 0.06, [...begin, ...roughed.flatMap((place) => plunge(place, 55)), ...plunge(50, 60)]),
    edge: square(0.05, 0.4),
    walls: 'plunged',
  }
  expect(toInch(operation.wanted[0]!.to)).toBeCloseTo(1.125 + width, 9)
  return replay(bench, bar([1.5, 4]), [operation]).faults.filter(({ kind }) => kind === 'no-wall-plunge').length
}

it('a wall that was roughed to its nearest mark has no metal left, though it stands a fifth of a mark beyond that', () => {
  expect(bare(0.1002, 10, 40)).toBe(0)
  expect(bare(0.1002, 10, 50)).toBe(1)
})
