import type { GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import type { Length, Units } from '../../units/length.ts'
import { angle, deepest } from './words.ts'

/** Without rake there is one thing to say of all forms. */
export const corrections = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  if (deepest(facts).rakeInUse === 0) return [['none: without rake in use what is ground is what is cut']]
  return facts.flatMap((each) => correction(each, units))
}

/** What to grind so that the work comes out as drawn, and what a tool ground to the drawing would cut. */
const correction = ({ form }: GrindFacts, units: Units): Phrase[] => {
  const of = (value: Length) => length('depth', value, units)
  if (form.vee !== null) return vee(form.vee, shallow(form, of), of)
  if (form.round !== null) return round(form.round, shallow(form, of), of)
  return form.corner === null ? square(form, of) : hollow(form.corner, of, units)
}

type Form = GrindFacts['form']
type Shown = (value: Length) => Figure

const shallow = (form: Form, of: Shown): Phrase => [
  'or it is ',
  of(form.shallow),
  ' shallow where it is as wide as drawn',
]

const vee = ({ ground, half, strays, cut }: NonNullable<Form['vee']>, otherwise: Phrase, of: Shown): Phrase[] => [
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

const round = (
  { radius, ground, strays, cut, width }: NonNullable<Form['round']>,
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

const hollow = (
  { radius, down, cutDown, arc, points }: NonNullable<Form['corner']>,
  of: Shown,
  units: Units,
): Phrase[] => {
  const fine = (value: Length) => length('tool', Math.round(value), units)
  const near: Phrase[] =
    arc === null
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
        ]
  const cuts: Phrase =
    arc === null ? [] : [', close to an arc of ', fine(arc.cutsRadius), ', within ', fine(arc.cutsStray)]
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
    ...near,
    ['ground to ', of(radius), ' both ways it would cut ', of(cutDown), ' down the face of the work', ...cuts],
  ]
}

const square = (form: Form, of: Shown): Phrase[] => [
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
