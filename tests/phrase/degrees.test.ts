import { expect, test } from 'vitest'
import { degrees, say } from '../../src/phrase/say.ts'
import { plain } from '../../src/phrase/words.ts'

test.each([
  [34, '34°'],
  [0, '0°'],
  [5 + 44 / 60, `5° 44'`],
  [14.5, `14° 30'`],
  [-14.5, `-14° 30'`],
  [29.9999, '30°'],
  [-0.001, '0°'],
  [84.26, `84° 16'`],
])('%d degrees is %s', (value, text) => {
  expect(plain(say`${degrees('angle', value)}`, 'inch')).toBe(text)
})
