import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { editDistance, suggest } from '../../src/diagnostics/suggest.ts'

const KEYS = [
  'title',
  'units',
  'part',
  'lathe',
  'tools',
  'features',
  'cutting',
  'bottom-diameter',
  'corner-radius',
  'width',
  'width-at',
  'depth',
]

describe('suggest', () => {
  test.each([
    ['widht', 'width'],
    ['Width', 'width'],
    ['depht', 'depth'],
    ['botom-diameter', 'bottom-diameter'],
    ['bottom_diameter', 'bottom-diameter'],
    ['bottom diameter', 'bottom-diameter'],
    ['cornerradius', 'corner-radius'],
    ['feature', 'features'],
    ['tool', 'tools'],
  ])('%s: %s', (word, meant) => {
    expect(suggest(word, KEYS)).toBe(meant)
  })

  test.each([['spindle'], ['x'], [''], ['color'], ['a'.repeat(200_000)]])(
    'nothing is near enough (case %#)',
    (word) => {
      expect(suggest(word, KEYS)).toBe(null)
    },
  )

  test('the nearest wins, and of equals the first', () => {
    expect(suggest('width-a', KEYS)).toBe('width-at')
    expect(suggest('bat', ['cat', 'rat'])).toBe('cat')
    expect(suggest('width', [])).toBe(null)
  })
})

describe('editDistance', () => {
  test.each([
    ['', '', 0],
    ['abc', '', 3],
    ['', 'abc', 3],
    ['ab', 'ba', 1],
    ['kitten', 'sitting', 3],
    ['widht', 'width', 1],
    ['ca', 'abc', 3],
  ])('%s to %s is %i', (from, to, distance) => {
    expect(editDistance(from, to)).toBe(distance)
  })

  test('is symmetric, zero only for equals, and never more than the longer word', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 })
    fc.assert(
      fc.property(word, word, (one, other) => {
        const distance = editDistance(one, other)
        expect(editDistance(other, one)).toBe(distance)
        expect(distance === 0).toBe(one === other)
        expect(distance).toBeLessThanOrEqual(Math.max(one.length, other.length))
        expect(distance).toBeGreaterThanOrEqual(Math.abs(one.length - other.length))
      }),
      { seed: 5 },
    )
  })
})
