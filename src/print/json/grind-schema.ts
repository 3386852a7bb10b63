import { SHAPE_WORDS } from '../../sheet/grind/shapes.ts'
import { list, nullable, number, object, range, type Schema, text } from './schema-words.ts'

/** How the tool of a feature is ground; lengths in the units of the sheet, angles in degrees. */
export const grindSchema = (): Schema =>
  object(
    {
      shape: { enum: Object.keys(SHAPE_WORDS) },
      bit: { enum: ['hss', 'carbide'] },
      measured: { type: 'boolean', description: 'false: still to be ground.' },
      work: { enum: ['one-off', 'repeat'] },
      blank: nullable(number('Smallest stock square that carries the edge, or its own.')),
      width: nullable(
        object({
          drawn: nullable(number('Of the groove.')),
          aim: number('To grind the edge to: a tool that was measured is sharpened to what it is.'),
          widest: number('How wide the edge may be for this form.'),
          edge: number('As the edge measures.'),
        }),
      ),
      nose: nullable(number('Flat at the nose of a V.')),
      cornerRadius: nullable(number('Of a square edge.')),
      holderAngle: number('By which the holder tilts the bit up.'),
      rake: object({
        ground: number('On the bit.'),
        inUse: number('With the tilt of the holder.'),
        advised: nullable(range('For a form tool in this metal.')),
        turning: nullable(range('For a plain turning tool in this metal.')),
      }),
      endRelief: object({ inUse: range('As the bit is held.'), ground: range('On the bit.') }),
      sideRelief: object({ ground: range('On the bit.'), inUse: range('As the bit is held.') }),
      sideClearance: object({
        ground: nullable(range('Back from the edge; null for a V, whose flanks widen.')),
        inUse: nullable(range('As the bit is held.')),
      }),
      form: form(),
      gauge: nullable(
        object({
          radius: number('Nearest leaf of a radius gauge.'),
          label: text('As the leaf is marked.'),
          off: number('Radius to grind less the leaf.'),
        }),
      ),
    },
    'Only where the grinding of the tools was asked for.',
  )

const form = (): Schema =>
  object(
    {
      depth: number('Of the form.'),
      surface: number('Diameter on which it is cut.'),
      alongFace: number('Length on the face from the tip to the surface.'),
      sidesReach: range('How far back the sides are relieved, along the face.'),
      shoulder: number('Height of a step close by that the sides must pass.'),
      squareToFront: number('Length on the face as measured square to the front.'),
      uncorrectedShallow: number('How much shallower it cuts when ground to the drawing.'),
      halfAngle: nullable(both('Half of the included angle of a V.')),
      radius: nullable(both('Of a round end.')),
      hollow: nullable(
        object({
          drawn: number('Radius, and both legs, as drawn.'),
          grindDown: number('Leg to grind down the face.'),
          uncorrectedCutsDown: number('Leg that a hollow ground to the drawing cuts.'),
          arc: nullable(
            object(
              {
                radius: number('Of the circle through both ends and the middle of the hollow.'),
                strays: number('How far the hollow to grind is from that circle.'),
                cutsRadius: number(
                  'Of the circle through both ends and the middle of what a hollow ground to the drawing cuts.',
                ),
                cutsStray: number('How far what it cuts is from that circle.'),
              },
              'Only with rake in use.',
            ),
          ),
          points: list(
            object({
              along: number('From the deep end, along the work.'),
              work: number('From the deep end, up the wanted form.'),
              face: number('Back on the face, to grind it so.'),
              uncorrected: number('Up the work, when the quarter is ground as drawn.'),
            }),
            'Only with rake in use: points of the quarter.',
          ),
        }),
      ),
    },
    'The form against what is ground on the face.',
  )

const both = (description: string): Schema =>
  object(
    {
      drawn: number('In the work.'),
      grind: number('On the face, for the work to come out as drawn.'),
      uncorrectedCuts: number('In the work, when ground to the drawing.'),
    },
    description,
  )
