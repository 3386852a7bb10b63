import { describe, expect, test } from 'vitest'
import { INCH, MM, type Units } from '../../src/units/length.ts'
import { parseLength } from '../../src/units/parse-length.ts'

const value = (text: string, units: Units = 'inch') => {
  const read = parseLength(text, units)
  return read.ok ? read.value : `refused: ${read.message}`
}
const refusal = (text: string, units: Units = 'inch') => {
  const read = parseLength(text, units)
  return read.ok ? `read as ${read.value}` : `${read.message} | ${read.hint}`
}

describe('the ways a machinist writes a length', () => {
  test.each([
    ['0.125', 3_175_000_000],
    ['.125', 3_175_000_000],
    ['5.', 127_000_000_000],
    ['4', 101_600_000_000],
    ['1/8', 3_175_000_000],
    ['1 3/16', 30_162_500_000],
    ['1-3/16', 30_162_500_000],
    ['1–3/16', 30_162_500_000],
    ['5/32 in', 3_968_750_000],
    ['5/32in', 3_968_750_000],
    ['5/32 inch', 3_968_750_000],
    ['0.125"', 3_175_000_000],
    ['1 3/16″', 30_162_500_000],
    ['12 thou', 304_800_000],
    ['4.5 mm', 4_500_000_000],
    ['4.5mm', 4_500_000_000],
    ['-0.25', -6_350_000_000],
    ['−1-1/2', -38_100_000_000],
    ['+.003', 76_200_000],
    ['0', 0],
    ['-0', 0],
    ['-0.000', 0],
    ['  1   1/2 ', 38_100_000_000],
  ])('%s in a file in inches', (text, pm) => {
    expect(value(text)).toBe(pm)
  })

  test.each([
    ['0.125', 125_000_000],
    ['1/8', 125_000_000],
    ['1/8 in', 3_175_000_000],
    ['12 thou', 304_800_000],
    ['6', 6 * MM],
  ])('%s in a file in mm', (text, pm) => {
    expect(value(text, 'mm')).toBe(pm)
  })
})

describe('exactness', () => {
  test('every 64th and its half to four inches is a whole number of picometers', () => {
    for (let count = 1; count <= 512; count++) expect(value(`${count}/128`)).toBe((count * INCH) / 128)
  })

  test('decimals go digit by digit, not through doubles', () => {
    // 1.005 × 25,400,000,000 in doubles is 25526999999.999996.
    expect(value('1.005')).toBe(25_527_000_000)
    expect(value('0.000000001', 'mm')).toBe(1)
    expect(value('8192.000000001', 'mm')).toBe(8_192_000_000_001)
    expect(value('9007199.254740991', 'mm')).toBe(Number.MAX_SAFE_INTEGER)
    expect(value('0.12345678912345678912345678', 'mm')).toBe(123_456_789)
  })

  test('what is no whole number of picometers goes to the nearest, half away from zero', () => {
    expect(value('1/3', 'mm')).toBe(333_333_333)
    expect(value('2/3', 'mm')).toBe(666_666_667)
    expect(value('-0.0000000005', 'mm')).toBe(-1)
  })

  test('a length too long to be held exactly is refused', () => {
    expect(refusal('9007199.254740992', 'mm')).toContain('longer than anything a lathe holds')
  })
})

describe('what is refused says what would be right', () => {
  test.each([
    ['0,5', '"0,5" has a comma in it | use a point: 0.5'],
    ['0,5 mm', 'use a point: 0.5'],
    ['1,000.5', 'nothing between thousands'],
    ['3/0', 'divides by zero'],
    ['1 5/4', 'not less than one'],
    ['1 4/4', 'not less than one'],
    ['1.5 1/4', 'is not a length | write a length like 0.125'],
    ['5 ft', '"ft" is not a unit of length | units are in (or "), thou and mm'],
    ['5 cm', '"cm" is not a unit'],
    ["5'", 'is not a unit'],
    ['5 constructor', 'is not a unit'],
    ['1e-3', 'is not a length'],
    ['0x10', 'is not a length'],
    ['', 'there is no length here'],
    ['   ', 'there is no length here'],
    ['in', 'is not a length'],
    ['.', 'is not a length'],
    ['-', 'is not a length'],
    ['--1', 'is not a length'],
    ['1..2', 'is not a length'],
    ['1/2/3', 'is not a length'],
    ['wide', 'is not a length'],
    ['0.125 ±0.005', 'is not a length'],
  ])('%s', (text, said) => {
    expect(refusal(text)).toContain(said)
  })

  test('a text longer than any drawing has', () => {
    expect(refusal('9'.repeat(100_000))).toContain('too long for a dimension')
  })
})
