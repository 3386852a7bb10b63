import { describe, expect, it } from 'vitest'
import { parseDimension } from '../../src/units/parse-dimension.ts'

describe('a tolerance beside thousandths', () => {
  it('in inches without a unit is not guessed at', () => {
    const read = parseDimension('120 thou +0.003 -0', 'inch')
    expect(read.ok ? read.value.text : read.message).toMatch(/has no unit/)
  })
  it('in whole thousandths, or with its unit, is plain', () => {
    const low = (text: string) => {
      const read = parseDimension(text, 'inch')
      return read.ok ? read.value.limits?.[0] : read.message
    }
    expect(low('120 thou ±3')).toBe(117 * 25_400_000)
    expect(low('120 thou ±0.003 in')).toBe(117 * 25_400_000)
  })
})
