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

describe('a bare size beside a tolerance in thousandths', () => {
  const read = (text: string, units: 'inch' | 'mm' = 'inch') => {
    const result = parseDimension(text, units)
    return result.ok ? result.value.limits?.map((limit) => limit / 25_400_000) : `${result.message} | ${result.hint}`
  }
  it('is not guessed at where it may be thousandths itself', () => {
    expect(read('12 ±1 thou')).toBe(
      '"12" beside a tolerance in thou has no unit: it could be 12 thou or 12 inches | write its unit too, like 12 thou ±1 thou or 12 in ±1 thou',
    )
    expect(read('12 +3 -0 thou')).toMatch(/12 thou or 12 inches \| .*12 thou \+3 -0 thou/)
    expect(read('12.5 ±1 thou')).toMatch(/has no unit/)
    expect(read('12 ±1 thou', 'mm')).toMatch(/12 thou or 12 mm/)
  })
  it('is in the units of the file where it cannot be', () => {
    expect(read('0.500 ±5 thou')).toEqual([495, 505])
    expect(read('1 ±5 thou')).toEqual([995, 1005])
    expect(read('1 1/2 ±5 thou')).toEqual([1495, 1505])
    expect(read('1.500 ±5 thou')).toEqual([1495, 1505])
  })
  it('with its own unit is plain, and millimeters at the end count for both', () => {
    expect(read('12 thou ±1 thou')).toEqual([11, 13])
    expect(read('12 in ±1 thou')).toEqual([11999, 12001])
    expect(read('4.5 ±0.1 mm')).toEqual([4.4e9 / 25_400_000, 4.6e9 / 25_400_000])
  })
})

describe('a size with a unit beside a tolerance without one', () => {
  const asked = (text: string, units: 'inch' | 'mm') => {
    const dimension = parseDimension(text, units)
    return dimension.ok ? dimension.value.limits : `${dimension.message} | ${dimension.hint}`
  }
  it('asks for the unit in a file in other units: 4 mm ±0.005 in inches was taken for 0.005 mm', () => {
    expect(asked('4 mm ±0.005', 'inch')).toBe(
      'the tolerance beside "4 mm" has no unit, and this file is in inches: it could be either | write its unit too, like 4 mm ±0.005 mm or 4 mm ±0.005 in',
    )
    expect(asked('5/32 in +0.1 -0', 'mm')).toBe(
      'the tolerance beside "5/32 in" has no unit, and this file is in millimeters: it could be either | write its unit too, like 5/32 in +0.1 -0 in or 5/32 in +0.1 -0 mm',
    )
    expect(asked('0.125" ±0.1', 'mm')).toContain('has no unit')
  })
  it('reads what it proposes, and what can only be one thing', () => {
    expect(asked('4 mm ±0.005 mm', 'inch')).toEqual([3_995_000_000, 4_005_000_000])
    expect(asked('4 mm ±0.005 in', 'inch')).toEqual([3_873_000_000, 4_127_000_000])
    expect(asked('5/32 in +0.1 -0 mm', 'mm')).toEqual([3_968_750_000, 4_068_750_000])
    expect(asked('4 mm ±0.005', 'mm')).toEqual([3_995_000_000, 4_005_000_000])
    expect(asked('5/32 in ±0.005', 'inch')).toEqual([3_841_750_000, 4_095_750_000])
    expect(asked('4 ±0.005 mm', 'inch')).toEqual([3_995_000_000, 4_005_000_000])
  })
})

describe('a whole number as a tolerance, without a unit', () => {
  const asked = (text: string, units: 'inch' | 'mm') => {
    const dimension = parseDimension(text, units)
    return dimension.ok ? dimension.value.limits : `${dimension.message} | ${dimension.hint}`
  }

  it('is asked for its unit: ±3 was taken for three inches, and the remedy spoke of a lower limit', () => {
    expect(asked('0.093 ±3', 'inch')).toBe(
      '±3 of what unit? in inches it is an inch or more | write its unit too: 0.093 ±3 thou, or in inches 0.093 ±0.003',
    )
    expect(asked('2.4 ±5', 'mm')).toBe(
      '±5 of what unit? in millimeters it is as much as the size itself | write it in mm: 2.4 ±0.05 for hundredths',
    )
    expect(asked('1.3 +14 -0', 'mm')).toContain('write it in mm: 1.3 +0.14 -0 for hundredths')
    expect(asked('0.03 ±4', 'mm')).toContain('write it in mm: 0.03 ±0.004 for thousandths')
    expect(asked('1 1/8 +0 -5', 'inch')).toContain('1 1/8 +0 -5 thou, or in inches 1 1/8 +0 -0.005')
    expect(asked('12 ±3', 'inch')).toContain('12 in ±3 thou, or in inches 12 ±0.003')
    expect(asked('0.093 in ±3', 'inch')).toContain('of what unit?')
    expect(asked('1.5 +0.002 -1', 'inch')).toContain('| write it in inches: 1.5 +0.002 -0.001')
  })

  it.each([
    ['0.093 ±3', 'inch', [0.09, 0.096]],
    ['0.093 in ±3', 'inch', [0.09, 0.096]],
    ['1 1/8 +0 -5', 'inch', [1.12, 1.125]],
    ['12 ±3', 'inch', [11.997, 12.003]],
    ['1 +2 -1', 'inch', [0.999, 1.002]],
  ] as const)('reads both ways that it proposes: %s', (text, units, limits) => {
    const said = asked(text, units) as string
    const ways = [/too: (.*?), or/.exec(said)?.[1], /in inches (?!it is)(.*)$/.exec(said)?.[1]]
    for (const way of ways)
      expect((asked(way!, units) as readonly number[]).map((limit) => limit / 25_400_000_000)).toEqual([
        expect.closeTo(limits[0], 9),
        expect.closeTo(limits[1], 9),
      ])
  })

  it.each([
    ['2.4 ±5', [2.35, 2.45]],
    ['1.3 +14 -0', [1.3, 1.44]],
    ['0.03 ±4', [0.026, 0.034]],
  ] as const)('reads the millimeters that it proposes: %s', (text, limits) => {
    const way = /in mm: (.*) for/.exec(asked(text, 'mm') as string)?.[1]
    expect((asked(way!, 'mm') as readonly number[]).map((limit) => limit / 1e9)).toEqual(
      limits.map((one) => expect.closeTo(one, 9)),
    )
  })

  it('is plain where it can only be one thing', () => {
    expect(asked('25 ±1', 'mm')).toEqual([24_000_000_000, 26_000_000_000])
    expect(asked('0 ±1', 'mm')).toEqual([-1_000_000_000, 1_000_000_000])
    expect(asked('93 thou ±3', 'inch')).toEqual([90 * 25_400_000, 96 * 25_400_000])
    expect(asked('5 in ±1 in', 'inch')).toEqual([4 * 25_400_000_000, 6 * 25_400_000_000])
    expect(asked('1.125 +0.005 -0', 'inch')).toEqual([28_575_000_000, 28_702_000_000])
  })
})
