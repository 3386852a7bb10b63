import { expect, it } from 'vitest'
import type { Program } from '../../src/sequence/program.ts'
import type { Request } from '../../src/sequence/request.ts'
import { travelRefusal } from '../../src/sequence/set-up.ts'
import { bench, inch, move } from '../replay/shop.ts'

/** Marks of .001: what the compound turns through, from its zero on. */
const refused = (travel: number, ...counts: readonly number[]): boolean => {
  const lathe = { ...bench, compound: { ...bench.compound, travel: inch(travel) } }
  const moves = counts.map((count) => move('shift', 'compound', count))
  return travelRefusal({ lathe, units: 'inch' } as Request, { moves } as unknown as Program) !== null
}

it('the compound needs the travel between its outermost readings, zero among them', () => {
  for (const counts of [[10, 50], [-50, -10], [-20, 30], [50], [-50]]) {
    expect([counts, refused(0.05, ...counts)]).toEqual([counts, false])
    expect([counts, refused(0.0499, ...counts)]).toEqual([counts, true])
  }
  expect(refused(0)).toBe(false)
})
