import { expect, it } from 'vitest'
import { shortTurn } from '../../src/phrase/short.ts'
import { words } from '../../src/phrase/words.ts'
import { bench } from '../replay/shop.ts'

/** Marks of .001, 100 a turn. What the column says, and what its row. */
const said = (from: number, to: number): readonly string[] => {
  const { passing, at } = shortTurn(bench.crossFeed, 'cross-feed', from, to)
  return [words(passing, 'inch'), words(at, 'inch')]
}

it.each([
  [-50, 52, 'past 0, to', '52'],
  [-50, 152, 'past 0, to', '1 turn and 52'],
  // Which 0 is meant is in the row: "the next 1 turn and 0" would be read as one turn more.
  [-50, 100, 'past 0, to', '1 turn and 0'],
  [-50, 200, 'past 0, to', '2 turns and 0'],
  [52, -100, 'past 0, onto the next', '0 (.100 out)'],
])('from %i to %i is told as "%s" over "%s"', (from, to, passing, at) => {
  expect(said(from, to)).toEqual([passing, at])
})
