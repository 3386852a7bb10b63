import type { FormFacts, GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Units } from '../../units/length.ts'
import { front, relieved, stone, top } from './passes.ts'
import { LIGHTLY, type ShapeWords, type Shown, shallow } from './shape-words.ts'

export const round: ShapeWords = {
  called: 'round',
  order,
  correction,
  gaugeAt: 'on the face',
  measure: () => [['micrometer across the edge where the radius ends'], LIGHTLY],
}

function order(_: readonly GrindFacts[], main: GrindFacts, units: Units): Phrase[] {
  return [
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
}

function correction(form: FormFacts, of: Shown): Phrase[] {
  return form.round === null ? [] : arc(form.round, shallow(form, of), of)
}

const arc = (
  { radius, ground, strays, cut, width }: NonNullable<FormFacts['round']>,
  otherwise: Phrase,
  of: Shown,
): Phrase[] => [
  ['grind radius ', of(ground), ' on the face; the work comes out ', of(radius), ', round within ', of(strays)],
  [
    'ground to ',
    of(radius),
    ' it would cut ',
    of(cut.radius),
    ', ',
    of(cut.width),
    ' wide for ',
    of(width),
    ', ',
    ...otherwise,
  ],
]
