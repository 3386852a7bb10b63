import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fewestPlaces, type Ridges } from '../../src/sequence/steps-fewest.ts'

type Drawn = { high: number; reach: number[]; rough: number[]; ends: number[]; anyEnd: boolean; cusp: number }

const drawn: fc.Arbitrary<Drawn> = fc.record({
  high: fc.integer({ min: 0, max: 8 }),
  // How much further than the place before it each place reaches: what follows a later place lies no nearer.
  reach: fc.array(fc.integer({ min: -1, max: 3 }), { minLength: 9, maxLength: 9 }),
  rough: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 81, maxLength: 81 }),
  ends: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 18, maxLength: 18 }),
  anyEnd: fc.boolean(),
  cusp: fc.integer({ min: 0, max: 20 }),
})

const ridgesOf = ({ reach, rough, ends, anyEnd }: Drawn): Ridges => ({
  anyEnd,
  before: (count) => ends[count]!,
  after: (count) => ends[9 + count]!,
  between: (near, far) => (far - near) ** 2 + rough[near * 9 + far]!,
  near: (near, far) => far <= reach.slice(0, near + 1).reduce((sum, step) => sum + step, near + 2),
})

/** Every choice of places there is, with its tallest ridge. */
const allWays = ({ high, anyEnd }: Drawn, ridges: Ridges) => {
  const all = Array.from({ length: high + 1 }, (_, i) => i)
  const sets = Array.from({ length: 2 ** all.length - 1 }, (_, bits) => all.filter((i) => ((bits + 1) >> i) & 1))
  return sets.filter(isWay).map((places) => ({ places, tallest: tallestOf(places), needs: needsOf(places) }))

  function isWay(places: number[]): boolean {
    if (!anyEnd && (places[0] !== 0 || places.at(-1) !== high)) return false
    return places.slice(1).every((far, i) => follows(places[i]!, far))
  }
  function follows(near: number, far: number): boolean {
    return all.slice(near + 2, far + 1).every((between) => ridges.near(near, between))
  }
  function inner(places: number[]): number[] {
    return places.slice(1).map((far, i) => ridges.between(places[i]!, far))
  }
  function tallestOf(places: number[]): number {
    return Math.max(0, ...inner(places), ...(anyEnd ? [ridges.before(places[0]!), ridges.after(places.at(-1)!)] : []))
  }
  /** The ends of the range may be the first and the last place whatever stays beyond them. */
  function needsOf(places: number[]): number {
    const [first, last] = [places[0]!, places.at(-1)!]
    return Math.max(0, ...inner(places), first === 0 ? 0 : ridges.before(first), last === high ? 0 : ridges.after(last))
  }
}

describe('the fewest places', () => {
  it('are as few, and leave as little, as the best of all that there are', () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const ridges = ridgesOf(one)
        const ways = allWays(one, ridges)
        const allowed = Math.max(one.cusp, Math.min(...ways.map(({ tallest }) => tallest)))
        const kept = ways.filter(({ needs }) => needs <= allowed)
        const fewest = Math.min(...kept.map(({ places }) => places.length))
        const few = kept.filter(({ places }) => places.length === fewest)
        const least = Math.min(...few.map(({ tallest }) => tallest))
        const found = fewestPlaces({ low: 0, high: one.high }, ridges, one.cusp)
        expect(few.filter(({ tallest }) => tallest === least).map(({ places }) => places)).toContainEqual(found)
      }),
      { numRuns: 500, seed: 20_263 },
    )
  })
})
