import type { FormFacts, GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Units } from '../../units/length.ts'
import { front, over, relieved, stone, top } from './passes.ts'
import { LIGHTLY, type ShapeWords, type Shown } from './shape-words.ts'
import { widthToGrind } from './words.ts'

export const square: ShapeWords = {
  called: 'square',
  order,
  correction,
  gaugeAt: 'on the corners',
  measure: () => [['micrometer across the two corners, at the very edge, where it is widest'], LIGHTLY],
}

function order(facts: readonly GrindFacts[], main: GrindFacts, units: Units): Phrase[] {
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

function correction(form: FormFacts, of: Shown): Phrase[] {
  return [
    ['make the sides ', of(form.face), ' long on the face to be ', of(form.depth), ' deep; the width is not changed'],
    [
      'with sides of ',
      of(form.depth),
      ' it would reach ',
      of(form.depth - form.shallow),
      ', ',
      of(form.shallow),
      ' short',
    ],
  ]
}
