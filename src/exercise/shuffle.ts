import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { hashed } from '../plan/identity.ts'

const generatorFor = (seed: string) => xoroshiro128plus(Number(BigInt.asIntN(32, hashed(seed))))

/**
 * The whole numbers below `size`, each once, in an order that only the seed decides. Only what was drawn is kept, so
 * that a space of millions costs nothing.
 */
export function* shuffled(size: number, seed: string): Generator<number> {
  const generator = generatorFor(seed)
  const moved = new Map<number, number>()
  for (let i = 0; i < size; i++) {
    const drawn = uniformInt(generator, i, size - 1)
    const value = moved.get(drawn) ?? drawn
    moved.set(drawn, moved.get(i) ?? i)
    moved.delete(i)
    yield value
  }
}

/** A list in another order. */
export const shuffledList = <T>(list: readonly T[], seed: string): T[] =>
  [...shuffled(list.length, seed)].map((index) => list[index]!)
