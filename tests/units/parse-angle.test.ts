import { describe, expect, test } from 'vitest'
import { parseAngle, parseAngleDimension } from '../../src/units/parse-angle.ts'

const angle = (text: string) => {
  const read = parseAngle(text)
  return read.ok ? read.value : `${read.message} | ${read.hint}`
}
const dimension = (text: string) => {
  const read = parseAngleDimension(text)
  return read.ok ? read.value : `${read.message} | ${read.hint}`
}

describe('angles', () => {
  test.each([
    ['34', 34],
    ['34 deg', 34],
    ['34°', 34],
    ['34 degrees', 34],
    ['14 1/2 deg', 14.5],
    ['14-1/2°', 14.5],
    ['14.5', 14.5],
    [`84° 16'`, 84 + 16 / 60],
    [`84°16'`, 84 + 16 / 60],
    ['84 deg 16 min', 84 + 16 / 60],
    [`84° 16′ 30″`, 84 + 16.5 / 60],
    [`5° 44.5'`, 344.5 / 60],
    [`30'`, 0.5],
    [`-5° 30'`, -5.5],
    [`-0° 30'`, -0.5],
    ['-29.5', -29.5],
    ['-0', 0],
    ['38.1', 38.1],
  ])('%s', (text, degrees) => {
    expect(angle(text)).toBe(degrees)
  })

  test.each([
    ['34,5', 'use a point: 34.5'],
    [`84° 60'`, 'has 60 minutes'],
    [`84° 16' 75"`, 'has 75 seconds'],
    [`84.5° 16'`, 'is not an angle'],
    ['34 rad', 'is not an angle'],
    ['3/0 deg', 'divides by zero'],
    ['', 'there is no angle here'],
    ['°', 'is not an angle'],
    ['steep', 'is not an angle | write an angle like 34'],
  ])('%s is refused', (text, said) => {
    expect(angle(text)).toContain(said)
  })

  test('a text longer than any drawing has is refused', () => {
    expect(angle('1'.repeat(50_000))).toContain('is not an angle')
  })
})

describe('angles with tolerances', () => {
  test.each([
    ['38', 38, null, 38],
    ['38 ±0.5', 38, [37.5, 38.5], 38],
    ['38° ±0.1', 38, [37.9, 38.1], 38],
    [`38° ±30'`, 38, [37.5, 38.5], 38],
    [`38° +30' -0`, 38, [38, 38.5], 38.25],
    ['38 +1 -0', 38, [38, 39], 38.5],
    ['37 to 39 deg', 38, [37, 39], 38],
  ])('%s', (text, nominal, limits, aim) => {
    expect(dimension(text)).toEqual({ nominal, limits, aim, text })
  })

  test.each([
    ['39 to 37', 'the wrong way around'],
    ['38 ±0', 'the same number'],
    ['38 +1', 'on one side only'],
    ['38 max', 'has no lower limit'],
    ['38 h11', 'is not an angle'],
  ])('%s is refused', (text, said) => {
    expect(dimension(text)).toContain(said)
  })
})
