import { describe, expect, it } from 'vitest'
import { stockBits, toolBitSquares } from '../../src/handbook/tool-bits.ts'

describe('stock tool bits', () => {
  it('rise in size and say where each size is from', () => {
    for (const units of ['inch', 'mm'] as const) {
      const bits = stockBits(units)
      for (const [index, bit] of bits.entries()) {
        if (index > 0) expect(bit.square).toBeGreaterThan(bits[index - 1]!.square)
        expect(Number.isInteger(bit.square)).toBe(true)
        expect(bit.source.includes('from memory')).toBe(bit.fromMemory)
      }
    }
  })

  it('gives the sides as numbers of the units, in the series of the trade', () => {
    expect(toolBitSquares('inch')).toEqual([1 / 4, 5 / 16, 3 / 8, 7 / 16, 1 / 2, 5 / 8, 3 / 4, 1])
    expect(toolBitSquares('mm')).toEqual([4, 5, 6, 8, 10, 12, 16, 20, 25])
  })
})
