import type { FormFacts, GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Units } from '../../units/length.ts'
import { stone, top } from './passes.ts'
import { type ShapeWords, type Shown, shallow } from './shape-words.ts'
import { angle, angles, lengths } from './words.ts'

export const vee: ShapeWords = {
  called: 'V',
  order,
  correction,
  gaugeAt: 'on the corners',
  measure: ({ nose }, units) =>
    nose !== null && nose > 0
      ? [['nose flat under a glass, against a scale or a feeler of ', length('tool', nose, units)]]
      : [['the point under a glass: no flat to be seen']],
}

function order(_: readonly GrindFacts[], main: GrindFacts, units: Units): Phrase[] {
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

function correction(form: FormFacts, of: Shown): Phrase[] {
  return form.vee === null ? [] : flanks(form.vee, shallow(form, of), of)
}

const flanks = (
  { ground, half, strays, cut }: NonNullable<FormFacts['vee']>,
  otherwise: Phrase,
  of: Shown,
): Phrase[] => [
  [
    'grind ',
    angle(2 * ground),
    ' included on the face; the work comes out ',
    angle(2 * half),
    ', its flanks straight within ',
    of(strays),
  ],
  ['ground to ', angle(2 * half), ' it would cut ', angle(2 * cut), ', ', ...otherwise],
]
