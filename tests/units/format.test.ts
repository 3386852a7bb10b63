import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatDifference, formatDigitsFor, formatFraction, formatLength } from '../../src/units/format.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { parseLength } from '../../src/units/parse-length.ts'

describe('lengths', () => {
  test.each([
    [INCH / 8, '.125'],
    [1.5 * INCH, '1.500'],
    [0, '.000'],
    [-INCH / 8, '-.125'],
    [(3 * INCH) / 16, '.188'],
    [(-3 * INCH) / 16, '-.188'],
    [-1, '.000'],
    [0.9996 * INCH, '1.000'],
  ])('%d pm in inches is %s', (length, text) => {
    expect(formatLength(length, 'inch')).toBe(text)
  })

  test.each([
    [MM / 2, '0.50'],
    [12 * MM, '12.00'],
    [-MM / 2, '-0.50'],
    [0.005 * MM, '0.01'],
    [-0.005 * MM, '-0.01'],
  ])('%d pm in mm is %s', (length, text) => {
    expect(formatLength(length, 'mm')).toBe(text)
  })

  test('digits can be asked for', () => {
    expect(formatLength((3 * INCH) / 16, 'inch', { digits: 4 })).toBe('.1875')
    expect(formatLength(1.5 * MM, 'mm', { digits: 0 })).toBe('2')
    expect(formatLength(0.5 * INCH, 'inch', { digits: 0 })).toBe('1')
  })

  test('an exact half goes away from zero, whatever a double makes of the decimal', () => {
    for (let thousandths = 0; thousandths < 2000; thousandths++) {
      const up = ((thousandths + 1) / 1000).toFixed(3).replace(/^0/, '')
      expect(formatLength(thousandths * (INCH / 1000) + INCH / 2000, 'inch')).toBe(up)
    }
  })

  test('what is shown with all its digits reads back as the same length', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -40_000_000, max: 40_000_000 }),
        fc.constantFrom('inch' as const, 'mm' as const),
        (count, units) => {
          const length = count * (units === 'inch' ? INCH / 100_000 : MM / 10_000)
          const text = formatLength(length, units, { digits: formatDigitsFor([length], units) })
          expect(parseLength(text, units)).toEqual({ ok: true, value: length === 0 ? 0 : length })
        },
      ),
      { seed: 11 },
    )
  })
})

test('as many digits as the lengths need, within what sheets show', () => {
  expect(formatDigitsFor([INCH / 8, INCH], 'inch')).toBe(3)
  expect(formatDigitsFor([INCH / 8, INCH / 16], 'inch')).toBe(4)
  expect(formatDigitsFor([INCH / 64], 'inch')).toBe(5)
  expect(formatDigitsFor([MM / 2], 'mm')).toBe(2)
  expect(formatDigitsFor([0.005 * MM], 'mm')).toBe(3)
  expect(formatDigitsFor([1], 'mm')).toBe(4)
})

describe('fractions', () => {
  test.each([
    [(5 * INCH) / 32, '5/32'],
    [1.5 * INCH, '1 1/2'],
    [2 * INCH, '2'],
    [0, '0'],
    [(-3 * INCH) / 64, '-3/64'],
    [INCH / 128, null],
    [INCH / 10, null],
  ])('%d pm is %s', (length, text) => {
    expect(formatFraction(length)).toBe(text)
  })

  test('every 64th reads back as itself', () => {
    for (let count = -300; count <= 300; count++) {
      const length = (count * INCH) / 64
      expect(parseLength(formatFraction(length) as string, 'inch')).toEqual({
        ok: true,
        value: length === 0 ? 0 : length,
      })
    }
  })
})

describe('a difference', () => {
  test('is told in the usual digits', () => {
    expect(formatDifference(0.0125 * INCH, 'inch')).toBe('.013')
    expect(formatDifference(0.5 * MM, 'mm')).toBe('0.50')
    expect(formatDifference(0.00012 * INCH, 'inch', { digits: 4 })).toBe('.0001')
  })

  test('is never told as nothing where it is something', () => {
    expect(formatDifference(3_810_000, 'inch')).toBe('.0002')
    expect(formatDifference(0.00002 * INCH, 'inch')).toBe('.00002')
    expect(formatDifference(-0.0004 * MM, 'mm')).toBe('-0.0004')
    expect(formatDifference(1, 'inch')).toBe('.0000000000' + '4')
    for (let pm = 1; pm < 1e12; pm = pm * 3 + 1)
      for (const units of ['inch', 'mm'] as const) expect(formatDifference(pm, units)).toMatch(/[1-9]/)
  })

  test('that is nothing is told as nothing', () => {
    expect(formatDifference(0, 'inch')).toBe('.000')
    expect(formatDifference(0, 'mm')).toBe('0.00')
  })
})
