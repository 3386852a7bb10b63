import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { angleDimension, angleFromZero, byDefault, choice, dimension, length } from '../../units/measure-schema.ts'
import { commonFeatureKeys, depthOrBottom, placeKeys, readPlace, roughToolKey } from '../common-schema.ts'
import type { FeatureBase, VGrooveFeature } from '../feature.ts'

export const vGrooveSchema = z
  .strictObject({
    kind: z.literal('v-groove').register(z.globalRegistry, { description: 'A groove with two sloping flanks.' }),
    ...placeKeys,
    angle: angleDimension('Included angle between the flanks, more than 1 and less than 179 degrees.', 1, 179),
    width: z.optional(
      dimension('Width at the surface as drawn, or at the diameter that width-at gives.', '0.500 ±0.010'),
    ),
    'width-at': byDefault('the surface as drawn', length('Diameter at which the width is given.', 2.8)),
    depth: z.optional(dimension('Depth below the surface as drawn. Depth or bottom-diameter.', '0.400 ±0.006')),
    'bottom-diameter': z.optional(dimension('Diameter at the bottom. Depth or bottom-diameter.', 2.25)),
    root: z.optional(dimension('Width of the flat bottom; 0 for a sharp V.', '0.150 ±0.004', 'zero or more')),
    method: byDefault(
      'plunge',
      choice(
        'How it is fed: plunge feeds straight in; flank-feed sets the compound to half the angle and slides the tool down the tailstock-side flank, so that the nose and the headstock-side flank cut.',
        ['plunge', 'flank-feed'],
      ),
    ),
    'flank-under': byDefault(
      '0.5',
      angleFromZero(
        'For flank-feed: how far under half the angle the compound is set, less than 1 1/2 degrees, so that the trailing flank is not rubbed; a light straight plunge then finishes both flanks. 0: the compound itself finishes, down the flank.',
        0.5,
        1.5,
      ),
    ),
    ...roughToolKey,
    ...commonFeatureKeys,
  })
  .register(z.globalRegistry, { title: 'V-groove' })

/**
 * Threads of 60 degrees are cut with the compound at 29 1/2, half a degree under (US Navy training manual 14345, position
 * of the compound rest): the same for a V.
 */
const FLANK_UNDER = 0.5

/** Two of width, depth (or bottom diameter) and root define the form; a width alone is a sharp V of that width. */
export const readVGroove = (
  given: Given<AsRead<z.output<typeof vGrooveSchema>>>,
  base: FeatureBase,
): VGrooveFeature | null => {
  const place = readPlace(given)
  depthOrBottom(given, false)
  const deep = given.has('depth') || given.has('bottom-diameter')
  if (!given.has('width') && !(deep && given.has('root')))
    given.report(
      null,
      'missing-key',
      'the form of the V is open',
      'give two of width, depth (or bottom-diameter) and root, or width alone for a sharp V',
    )
  if (given.has('width-at') && !given.has('width'))
    given.report(
      'width-at',
      'useless-key',
      'width-at says where a width is measured, and no width is given',
      'give width as well, or take width-at out',
    )
  const { angle, width, 'width-at': widthAt, depth, 'bottom-diameter': bottomDiameter, root, method } = given.values
  const under = given.values['flank-under']
  if (!place || !angle) return null
  return {
    ...base,
    kind: 'v-groove',
    place,
    angle,
    width: width ?? null,
    widthAt: widthAt ?? null,
    depth: depth ?? null,
    bottomDiameter: bottomDiameter ?? null,
    root: root ?? null,
    method: method ?? 'plunge',
    flankUnder: under ?? FLANK_UNDER,
    roughTool: given.values['rough-tool'] ?? null,
  }
}
