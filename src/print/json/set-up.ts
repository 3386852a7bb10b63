import type { Placing, Touch, TouchPlace } from '../../moves/placing.ts'
import type { SheetFeature } from '../../sheet/sheet.ts'
import { inUnits, type Length, type Units } from '../../units/length.ts'
import { list, nullable, number, object, range, type Schema } from './schema-words.ts'

type Planned = Extract<SheetFeature, { status: 'planned' }>

/** The instructions for the set-up, and the zeros that the replay found from it. */
export const setUpData = (feature: Planned, units: Units) => ({
  placing: placingData(feature.placing, units),
  touch: touchData(feature.touch, units),
  lines: feature.lines.map((line) => plain(line, units)),
  zero: { fromEnd: plain(feature.zero.fromEnd, units), diameter: plain(feature.zero.diameter, units) },
  clear: plain(feature.clear, units),
  cusp:
    feature.cusp === null ? null : { most: plain(feature.cusp.most, units), ridge: plain(feature.cusp.ridge, units) },
  jawClearance: plain(feature.jawClearance, units),
  sideFeed: feature.sideFeed,
})

const placingData = ({ point, against }: Placing | TouchPlace, units: Units) => ({
  point,
  against: Object.fromEntries(
    Object.entries(against).map(([what, place]: [string, Length | readonly Length[]]) => [
      what,
      typeof place === 'number' ? plain(place, units) : place.map((one) => plain(one, units)),
    ]),
  ),
})

const touchData = ({ diameter, at }: Touch, units: Units) => ({
  diameter: plain(diameter, units),
  at: at === null ? null : placingData(at, units),
})

/** Nine decimals: finer than a picometer in millimeters, and no binary rounding error. */
const plain = (length: Length, units: Units): number => Number(inUnits(length, units).toFixed(9))

export const setUpSchema = (): Schema => ({
  placing: placing(
    'What the hand brings to what along the work. Corners are the ends of the whole ground edge; those of the nose are the ends of the stretch on which it is deepest; the tip is the middle of that stretch.',
    {
      line: number('On this scribed line, from the free end.'),
      between: range('Midway between two lines.'),
      face: number('Touching the face of a shoulder there.'),
      beside: number('Short of a face there by `gap`: near, no zero yet.'),
      gap: number('How far short of the face.'),
    },
  ),
  touch: object(
    {
      diameter: number('Diameter of the metal that the edge is fed in to touch.'),
      at: nullable(
        placing('Where the tool is brought for the touch, where that is another place.', {
          past: number('A face; the point is past it by `by`, so that only that much of the edge is over the work.'),
          by: number('How far past the face.'),
          over: range('Anywhere over this stretch of the work.'),
        }),
      ),
    },
    'What the cross-feed is touched off on.',
  ),
  lines: list(number('From the free end.'), 'Lines scribed for this feature.'),
  zero: object(
    {
      fromEnd: number("Where the tool's reference point is along the work with all dials at zero."),
      diameter: number('Work diameter that the reference point of the edge is at with the cross-feed at zero.'),
    },
    'Found by the replay from placing, touch and steps; nothing is planned from it.',
  ),
  clear: number('Radial clearance asked for when the tool is backed out.'),
  cusp: nullable(
    object({
      most: number('Tallest ridge that the job or the default allows.'),
      ridge: number('Tallest ridge that the replay measured, square to the form.'),
    }),
  ),
  jawClearance: number('Kept from the jaws.'),
  sideFeed: { enum: ['compound', 'carriage', 'lines'], description: 'What moves the tool along the work.' },
})

const placing = (description: string, against: Schema): Schema =>
  object(
    {
      point: {
        enum: ['tailstock-corner', 'headstock-corner', 'nose-tailstock-corner', 'nose-headstock-corner', 'tip'],
        description: 'Point of the edge.',
      },
      against: object(against, 'One of these.', Object.keys(against)),
    },
    description,
  )
