import * as z from 'zod/mini'
import { angle, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const veeToolSchema = z
  .strictObject({
    shape: z.literal('vee').check(z.describe('A pointed edge with a flat nose.')),
    angle: angle('Included angle between the flanks.', 0, 180),
    nose: length('Width of the flat at the nose as measured; 0 for a keen point.', 'zero or more'),
    reach: reach(),
    ...commonToolKeys,
  })
  .check(z.meta({ title: 'vee tool' }))
