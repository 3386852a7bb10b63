import * as z from 'zod/mini'
import { length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const roundToolSchema = z
  .strictObject({
    shape: z.literal('round').register(z.globalRegistry, { description: 'A convex round end.' }),
    radius: length('Radius of the end as measured.'),
    'edge-width': z.optional(length('Width over which the end is round; by default twice the radius.')),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'round tool' })
