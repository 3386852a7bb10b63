import * as z from 'zod/mini'
import { angle, angleFromZero, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const veeToolSchema = z
  .strictObject({
    shape: z.literal('vee').register(z.globalRegistry, { description: 'A pointed edge with a flat nose.' }),
    angle: angle('Included angle between the flanks, more than 1 and less than 179 degrees.', 1, 179),
    nose: length('Width of the flat at the nose as measured; 0 for a keen point.', 'zero or more'),
    'angle-within': z.optional(
      angleFromZero(
        'How near that angle is known: half a degree by protractor (the default), less by a template or a sine bar.',
        10,
      ),
    ),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'vee tool' })
