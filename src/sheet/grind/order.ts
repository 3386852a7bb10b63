import type { GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { INCH, type Length, MM, type Units } from '../../units/length.ts'
import { widthToGrind } from './says.ts'
import { angle, angles, deepest, lengths, topWords } from './words.ts'

/** The order of grinding, one line each, with what to check before going on. Common practice, no source. */
export const orderOf = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  const main = deepest(facts)
  switch (main.shape) {
    case 'square':
      return square(facts, main, units)
    case 'vee':
      return vee(main, units)
    case 'round':
      return round(main, units)
    case 'corner':
      return corner(main, units)
  }
}

/** Left for the stone and the last passes: 0.010 in, 0.25 mm. */
const over = (units: Units): Length => (units === 'inch' ? INCH / 100 : MM / 4)

const square = (facts: readonly GrindFacts[], main: GrindFacts, units: Units): Phrase[] => {
  const aim = widthToGrind(facts)
  return [
    front(main),
    relieved('One side', main, units),
    [
      'The other side alike, until the edge measures ',
      length('tool', aim + over(units), units),
      '. CHECK: both sides fall away from the edge going down and going back.',
    ],
    ...top(main),
    ['The end once more, lightly. CHECK: square to the side of the bit, with a square.'],
    [
      'Both sides down to ',
      length('tool', aim, units),
      '. CHECK: micrometer at the edge, lightly, often toward the end.',
    ],
    ...(main.cornerRadius === null
      ? []
      : [['Stone the corners to ', length('tool', main.cornerRadius, units), '. CHECK: radius gauge.']]),
    stone('end and sides flat on their relief'),
    ['Measure the edge again and write the width into the toolbox: the plan goes by what it measures.'],
  ]
}

const vee = (main: GrindFacts, units: Units): Phrase[] => {
  const half = main.form.vee?.ground ?? 0
  return [
    [
      'One flank: ',
      angle(half),
      ' from the side of the bit, relief ',
      ...angles(main.sides.relief),
      ' under it. CHECK: protractor.',
    ],
    ['The other flank alike, to a point in the middle. CHECK: ', angle(2 * half), ' between them, on the face.'],
    ['The flanks reach ', ...lengths(main.form.sidesReach, units), ' back along the face.'],
    ...top(main),
    ...(main.rakeGround === 0
      ? []
      : [
          [
            'CHECK the V again after the top: ',
            angle(2 * half),
            ' on the face. Rake changes what the flanks show; regrind them, not the top.',
          ],
        ]),
    main.nose !== null && main.nose > 0
      ? [
          'Nose flat to ',
          length('tool', main.nose, units),
          ', relief ',
          ...angles(main.endRelief.ground),
          ', square to the bit. CHECK: glass and scale; stop short, the stone takes the rest.',
        ]
      : ['Leave the point keen; under it relief ', ...angles(main.endRelief.ground), '.'],
    stone('flanks and nose flat on their relief'),
    ['Measure nose and angle again and write them into the toolbox.'],
  ]
}

const relieved = (which: string, main: GrindFacts, units: Units): Phrase => [
  `${which}: relief `,
  ...angles(main.sides.relief),
  ', clearance ',
  ...angles(main.sides.back ?? [0, 0]),
  ' back, ',
  ...lengths(main.form.sidesReach, units),
  ' long.',
]

const round = (main: GrindFacts, units: Units): Phrase[] => [
  front(main),
  relieved('Both sides', main, units),
  ['Take the corners off in facets, the front tipped to its relief all the way round.'],
  [
    'Swing the end round on the wheel to about half of its arc. CHECK: radius gauge at half way, before metal is gone that is wanted.',
  ],
  ...top(main),
  [
    'Swing to the full arc, ',
    length('tool', Math.round(main.form.round?.ground ?? 0), units),
    main.rakeGround === 0
      ? ' on the face. CHECK: radius gauge, no light.'
      : ' on the face. CHECK: radius gauge again after the top, no light: rake changes what it shows.',
  ],
  stone('round the arc, along its relief'),
  ['Measure again and write the radius into the toolbox.'],
]

const corner = (main: GrindFacts, units: Units): Phrase[] => [
  ['Dress a corner of the wheel to radius ', length('tool', Math.round(main.form.corner?.radius ?? 0), units), '.'],
  front(main),
  [
    'Both sides, so that only the hollow touches: relief ',
    ...angles(main.sides.relief),
    ', clearance ',
    ...angles(main.sides.back ?? [0, 0]),
    ' back.',
  ],
  [
    'Shape the hollow on the corner of the wheel, the bit tipped so that the relief, ',
    ...angles(main.endRelief.ground),
    ', is ground with it. CHECK: radius gauge at half way.',
  ],
  ...top(main),
  ['Hollow to the full quarter. CHECK: radius gauge, no light; both tips end square, neither stands past the quarter.'],
  stone('the hollow with a round slip, along its relief; keep both tips sharp'),
  ['Measure again and write the radius into the toolbox.'],
]

const front = (main: GrindFacts): Phrase => [
  'The end: square to the bit, relief ',
  ...angles(main.endRelief.ground),
  '. CHECK: protractor from the bottom of the bit, ',
  angle(90 - main.endRelief.ground[1]),
  ' to ',
  angle(90 - main.endRelief.ground[0]),
  '.',
]

const top = (main: GrindFacts): Phrase[] =>
  main.rakeGround === 0
    ? []
    : [['The ', ...topWords(main.rakeGround), '. CHECK: protractor on the top, as little taken off as cleans it up.']]

const stone = (what: string): Phrase => [
  `Stone ${what}; no rounded edge. CHECK: under a glass, no light line along the edge.`,
]
