import type { GrindFacts } from '../moves/grinding.ts'
import type { Length, Units } from '../units/length.ts'
import { length } from './figure.ts'
import { angle, deepest } from './grind-words.ts'
import type { Phrase } from './sheet.ts'

/** Without rake there is one thing to say of all forms. */
export const corrections = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  if (deepest(facts).rakeInUse === 0) return [['none: without rake in use what is ground is what is cut']]
  return facts.flatMap((each) => correction(each, units))
}

const correction = ({ form }: GrindFacts, units: Units): Phrase[] => {
  const of = (value: Length) => length('depth', value, units)
  const shallow: Phrase = ['or it is ', of(form.shallow), ' shallow where it']
  if (form.vee !== null)
    return [
      [
        'grind ',
        angle(2 * form.vee.ground),
        ' included on the face; the work comes out ',
        angle(2 * form.vee.half),
        ', its flanks straight within ',
        of(form.vee.strays),
      ],
      [
        'ground to ',
        angle(2 * form.vee.half),
        ' it would cut ',
        angle(2 * form.vee.cut),
        ', ',
        ...shallow,
        ' is as wide as drawn',
      ],
    ]
  if (form.round !== null) {
    const { radius, ground, strays, cut, width } = form.round
    return [
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
        ...shallow,
        ' is as wide as drawn',
      ],
    ]
  }
  if (form.corner !== null) {
    const { radius, down, cutDown, arc, points } = form.corner
    const fine = (value: Length) => length('tool', Math.round(value), units)
    return [
      [
        'grind the hollow ',
        of(radius),
        ' along the edge and ',
        of(down),
        ' down the face; the work comes out ',
        of(radius),
        ' both ways',
      ],
      ...(arc === null
        ? []
        : [
            [
              'close to an arc of ',
              fine(arc.radius),
              ' on the face, within ',
              fine(arc.strays),
              '; its points from the deep tip,',
            ],
            [
              'along the edge and down the face: ',
              ...points.flatMap(({ along, face }, i) => [...(i === 0 ? [] : [', ']), of(along), ' ', of(face)]),
            ],
          ]),
      [
        'ground to ',
        of(radius),
        ' both ways it would cut ',
        of(cutDown),
        ' down the face of the work',
        ...(arc === null ? [] : [', close to an arc of ', fine(arc.cutsRadius), ', within ', fine(arc.cutsStray)]),
      ],
    ]
  }
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
