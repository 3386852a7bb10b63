import fc from 'fast-check'

/** A job is read off a tape of random numbers, so that shortening a failing job means making its numbers smaller. */
export type Tape = {
  int: (low: number, high: number) => number
  chance: (percent: number) => boolean
  pick: <T>(choices: readonly T[]) => T
}

export const tapes = fc.array(fc.noBias(fc.nat({ max: 9999 })), { minLength: 240, maxLength: 240 })

export function readTape(numbers: readonly number[]): Tape {
  let at = 0
  const next = (): number => numbers[at++ % numbers.length]! / 10_000
  const int = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1))
  return {
    int,
    chance: (percent) => next() * 100 >= 100 - percent,
    pick: (choices) => choices[int(0, choices.length - 1)]!,
  }
}
