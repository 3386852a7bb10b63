import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { byDefault, choice, dimension, dimensionOrMost } from '../../units/measure-schema.ts'
import { commonFeatureKeys, depthOrBottom, placeKeys, readPlace } from '../common-schema.ts'
import type { FeatureBase, GrooveFeature } from '../feature.ts'

export const grooveSchema = z
  .strictObject({
    kind: z.literal('groove').register(z.globalRegistry, { description: 'A square groove, neck or recess.' }),
    ...placeKeys,
    width: dimension('Width between the walls.', '5/32 ±0.005'),
    depth: z.optional(dimension('Depth below the surface as drawn. Depth or bottom-diameter.', '0.070 +0.004 -0')),
    'bottom-diameter': z.optional(dimension('Diameter at the bottom. Depth or bottom-diameter.', '0.735 ±0.008')),
    'corner-radius': byDefault(
      'whatever the tool leaves',
      dimensionOrMost('Radius of the fillets between walls and floor: as drawn, or the largest allowed and "max".'),
    ),
    walls: byDefault(
      'plunged where the limits of the width are less than 0.008 in (0.2 mm) apart, or the groove is three tool widths wide or more; otherwise swept',
      choice(
        'How the walls are finished: plunged, each by a plunge of its own with the floor cleaned away from it; or swept, in at the near wall and across to the far one.',
        ['plunged', 'swept'],
      ),
    ),
    ...commonFeatureKeys,
  })
  .register(z.globalRegistry, { title: 'groove' })

export const readGroove = (
  given: Given<AsRead<z.output<typeof grooveSchema>>>,
  base: FeatureBase,
): GrooveFeature | null => {
  const place = readPlace(given)
  depthOrBottom(given, true)
  const { width, depth, 'bottom-diameter': bottomDiameter, 'corner-radius': cornerRadius } = given.values
  if (!place || !width || !(depth ?? bottomDiameter)) return null
  return {
    ...base,
    kind: 'groove',
    place,
    width,
    depth: depth ?? null,
    bottomDiameter: bottomDiameter ?? null,
    cornerRadius: cornerRadius ?? null,
    walls: given.values.walls ?? null,
  }
}
