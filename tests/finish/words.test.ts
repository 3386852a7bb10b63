import { expect, test } from 'vitest'
import { shown } from '../../src/finish/words.ts'
import { INCH, type Length, MM, type Units } from '../../src/units/length.ts'

test.each<[Length, Units, number, number]>([
  // What needs five decimals is told to a tenth of a thousandth, or to a micrometer; what needs fewer is told as it is.
  [1.00035 * INCH, 'inch', 1.00035, 4],
  [12.3456 * MM, 'mm', 12.3456, 3],
  [0.05497 * INCH, 'inch', 0.05497, 4],
  [1.0004 * INCH, 'inch', 1.0004, 4],
  [1.165 * INCH, 'inch', 1.165, 3],
  [12.34 * MM, 'mm', 12.34, 2],
])('%d %s: a measured length is shown with the digits that a hand can use', (length, units, value, digits) => {
  expect(shown(length, units)).toMatchObject({ value, digits })
})
