import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { dimension, dimensionOrMost } from '../../units/measure-schema.ts'
import { commonFeatureKeys, depthOrBottom, placeKeys, readPlace } from '../common-schema.ts'
import type { FeatureBase, GrooveFeature } from '../feature.ts'

export const grooveSchema = z
  .strictObject({
    kind: z.literal('groove').register(z.globalRegistry, { description: 'A square groove, neck or recess.' }),
    ...placeKeys,
    width: dimension('Width between the walls.'),
    depth: z.optional(dimension('Depth below the surface as drawn, or bottom-diameter.')),
    'bottom-diameter': z.optional(dimension('Diameter at the bottom, or depth.')),
    'corner-radius': z.optional(
      dimensionOrMost('Radius in the bottom corners: as drawn, or the largest allowed, followed by "max".'),
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
  }
}
