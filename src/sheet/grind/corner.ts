import type { FormFacts, GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Length, Units } from '../../units/length.ts'
import { front, stone, top } from './passes.ts'
import type { ShapeWords, Shown } from './shape-words.ts'
import { angles } from './words.ts'

export const corner: ShapeWords = {
  called: 'corner',
  order,
  correction,
  gaugeAt: 'in the hollow',
  measure: () => [
    ['both tips with a scale from the end and from the side of the bit; no micrometer enters the hollow'],
  ],
}

function order(_: readonly GrindFacts[], main: GrindFacts, units: Units): Phrase[] {
  return [
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
    ['Hollow to the full quarter. CHECK: radius gauge, no light; both tips end square, neither goes past the quarter.'],
    stone('the hollow with a round slip, along its relief; keep both tips sharp'),
    // Common practice, no source: a tip that is square to the surface scores a ring where the arc ends.
    ['Stone the outside of each tip back by a hair, so that it leaves no ring where the arc meets the surface.'],
    ['Measure again and write the radius into the toolbox.'],
  ]
}

function correction(form: FormFacts, of: Shown, units: Units): Phrase[] {
  return form.corner === null ? [] : hollow(form.corner, of, units)
}

const hollow = (
  { radius, down, cutDown, arc, points }: NonNullable<FormFacts['corner']>,
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
