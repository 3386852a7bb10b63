import * as z from 'zod/mini'
import { dimension, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const squareToolSchema = z
  .strictObject({
    shape: z.literal('square').register(z.globalRegistry, { description: 'A straight edge, square to the work.' }),
    width: dimension('Width of the edge as measured.'),
    'corner-radius': z.optional(length('Radius on both corners of the edge; by default 0.', 'zero or more')),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'square tool' })
