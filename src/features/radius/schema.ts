import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { dimension, text } from '../../units/measure-schema.ts'
import { commonFeatureKeys, placeKeys, readPlace, roughToolKey } from '../common-schema.ts'
import type { ConcaveFeature, CornerFeature, FeatureBase } from '../feature.ts'

const kind = z.literal('radius').register(z.globalRegistry, { description: 'A round form.' })

const concaveSchema = z
  .strictObject({
    kind,
    shape: z.literal('concave').register(z.globalRegistry, { description: 'A round groove.' }),
    ...placeKeys,
    radius: dimension('Radius of the groove.', '3/32'),
    width: z.optional(
      dimension('Width at the surface. Width or depth; given both, they are checked against each other.', '5/32'),
    ),
    depth: z.optional(
      dimension('Depth in the middle. Width or depth; given both, they are checked against each other.', 0.042),
    ),
    ...roughToolKey,
    ...commonFeatureKeys,
  })
  .register(z.globalRegistry, { title: 'concave radius' })

const cornerSchema = z
  .strictObject({
    kind,
    shape: z
      .literal('corner')
      .register(z.globalRegistry, { description: 'A convex radius on a corner that faces the tailstock.' }),
    'corner-of': text('Whose tailstock-side corner it is: end, or the name of a step.', 'end'),
    radius: dimension('Radius of the corner.', '1/8 ±1/64'),
    ...commonFeatureKeys,
  })
  .register(z.globalRegistry, { title: 'corner radius' })

export const radiusSchema = z
  .discriminatedUnion('shape', [concaveSchema, cornerSchema])
  .register(z.globalRegistry, { title: 'radius' })

const readConcave = (
  given: Given<AsRead<z.output<typeof concaveSchema>>>,
  base: FeatureBase,
): ConcaveFeature | null => {
  const place = readPlace(given)
  if (!given.has('width') && !given.has('depth'))
    given.report(
      null,
      'missing-key',
      'the radius alone does not say how much of it is cut',
      'give width or depth as well',
    )
  const { radius, width, depth } = given.values
  if (!place || !radius || !(width ?? depth)) return null
  const { 'rough-tool': roughTool } = given.values
  return {
    ...base,
    kind: 'radius',
    shape: 'concave',
    place,
    radius,
    width: width ?? null,
    depth: depth ?? null,
    roughTool: roughTool ?? null,
  }
}

const readCorner = (given: Given<AsRead<z.output<typeof cornerSchema>>>, base: FeatureBase): CornerFeature | null => {
  const { 'corner-of': cornerOf, radius } = given.values
  return cornerOf && radius ? { ...base, kind: 'radius', shape: 'corner', cornerOf, radius } : null
}

type RadiusRead = AsRead<z.output<typeof radiusSchema>>

/** Null also if no shape could be read. */
export const readRadius = (given: Given<RadiusRead>, base: FeatureBase): ConcaveFeature | CornerFeature | null => {
  const { shape } = given.values
  if (shape === 'concave') return readConcave(given as Parameters<typeof readConcave>[0], base)
  return shape === 'corner' ? readCorner(given as Parameters<typeof readCorner>[0], base) : null
}
