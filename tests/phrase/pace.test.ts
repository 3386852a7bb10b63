import { expect, it } from 'vitest'
import type { Scale } from '../../src/lathe/lathe.ts'
import { paceOn } from '../../src/phrase/pace.ts'
import { words } from '../../src/phrase/words.ts'
import { INCH, MM } from '../../src/units/length.ts'

const dial = (reads: 'depth' | 'diameter', graduation: number, perTurn: number): Scale => ({
  kind: 'dial',
  units: 'inch',
  graduation: graduation * INCH,
  perTurn: perTurn * INCH,
  reads,
  backlash: 0,
  readTo: 1,
})
const said = (scale: Scale, inches: number): string => words(paceOn(scale, inches * INCH, 'inch'), 'inch')

// .002 a turn at 60 rpm is .002 a second: two marks of .001, or four where the dial reads diameter (plane arithmetic).
it.each([
  ['2 marks a second', dial('depth', 0.001, 0.1), 0.002],
  ['4 marks a second', dial('diameter', 0.001, 0.2), 0.002],
  ['1 mark a second', dial('depth', 0.001, 0.1), 0.001],
  ['a mark in 4 s', dial('depth', 0.001, 0.1), 0.00025],
  // Ten marks a second are not counted: a hundred of them are a turn in ten seconds.
  ['a turn of the dial in 10 s', dial('depth', 0.001, 0.1), 0.01],
])('a hand turns %s', (words, scale, inches) => {
  expect(said(scale, inches)).toBe(words)
})

it('a readout has no marks: what it counts on in a second', () => {
  const readout: Scale = { kind: 'readout', units: 'mm', resolution: MM / 200, reads: 'diameter' }
  expect(words(paceOn(readout, 0.05 * MM, 'mm'), 'mm')).toBe('0.10 a second')
})
