import * as z from 'zod/mini'
import { byDefault, dimension, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const squareToolSchema = z
  .strictObject({
    shape: z.literal('square').register(z.globalRegistry, { description: 'A straight edge, square to the work.' }),
    width: dimension('Width of the edge as measured.', '0.148 ±0.0005'),
    'corner-radius': byDefault('0', length('Radius on both corners of the edge as measured.', 0.01, 'zero or more')),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'square tool' })
