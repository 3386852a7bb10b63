import type { GrindFacts } from '../../moves/grinding.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { INCH, type Length, MM, type Units } from '../../units/length.ts'
import { angle, angles, lengths, topWords } from './words.ts'

// Lines that several shapes have in their order of grinding. Common practice, no source.

/** Left for the stone and the last passes: 0.010 in, 0.25 mm. */
export const over = (units: Units): Length => (units === 'inch' ? INCH / 100 : MM / 4)

export const front = (main: GrindFacts): Phrase => [
  'The end: square to the bit, relief ',
  ...angles(main.endRelief.ground),
  '. CHECK: protractor from the bottom of the bit, ',
  angle(90 - main.endRelief.ground[1]),
  ' to ',
  angle(90 - main.endRelief.ground[0]),
  '.',
]

export const relieved = (which: string, main: GrindFacts, units: Units): Phrase => [
  `${which}: relief `,
  ...angles(main.sides.relief),
  ', clearance ',
  ...angles(main.sides.back ?? [0, 0]),
  ' back, ',
  ...lengths(main.form.sidesReach, units),
  ' long.',
]

export const top = (main: GrindFacts): Phrase[] =>
  main.rakeGround === 0
    ? []
    : [['The ', ...topWords(main.rakeGround), '. CHECK: protractor on the top, as little taken off as cleans it up.']]

export const stone = (what: string): Phrase => [
  `Stone ${what}; no rounded edge. CHECK: under a glass, no light line along the edge.`,
]
