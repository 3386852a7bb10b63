import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseAngle, parseAngleDimension } from '../../src/units/parse-angle.ts'
import { parseDimension } from '../../src/units/parse-dimension.ts'
import { parseLength } from '../../src/units/parse-length.ts'

const BITS = [
  '1',
  '5',
  '0',
  '.',
  '/',
  ' ',
  '-',
  '+',
  '±',
  'to',
  'max',
  'in',
  'mm',
  '"',
  'thou',
  'h',
  'H',
  '11',
  ',',
  'deg',
  '°',
  "'",
]
const text = fc.array(fc.constantFrom(...BITS), { maxLength: 12 }).map((bits) => bits.join(''))
const units = fc.constantFrom('inch' as const, 'mm' as const)

test('a dimension is whole picometers between limits that leave room, or a message with a remedy', () => {
  fc.assert(
    fc.property(text, units, (written, unit) => {
      const read = parseDimension(written, unit)
      if (!read.ok) {
        for (const said of [read.message, read.hint]) expect(said).toMatch(/[^.]$/)
        return
      }
      const { nominal, limits, aim } = read.value
      const [low, high] = limits ?? [aim, aim]
      expect([nominal, aim, low, high].every((length) => Number.isSafeInteger(length) && !Object.is(length, -0))).toBe(
        true,
      )
      if (limits) expect(low).toBeLessThan(high)
      expect(aim).toBeGreaterThanOrEqual(low)
      expect(aim).toBeLessThanOrEqual(high)
    }),
    { seed: 3, numRuns: 5000 },
  )
})

test('every length is a dimension without limits, every angle an angle without', () => {
  fc.assert(
    fc.property(text, units, (written, unit) => {
      const length = parseLength(written, unit)
      if (length.ok)
        expect(parseDimension(written, unit)).toMatchObject({
          ok: true,
          value: { nominal: length.value, limits: null },
        })
      const angle = parseAngle(written)
      if (angle.ok)
        expect(parseAngleDimension(written)).toMatchObject({ ok: true, value: { nominal: angle.value, limits: null } })
    }),
    { seed: 4, numRuns: 5000 },
  )
})
