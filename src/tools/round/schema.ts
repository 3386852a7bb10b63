import * as z from 'zod/mini'
import { length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const roundToolSchema = z
  .strictObject({
    shape: z.literal('round').check(z.describe('A convex round end.')),
    radius: length('Radius of the end as measured.'),
    'edge-width': z.optional(length('Width over which the end is round; by default twice the radius.')),
    reach: reach(),
    ...commonToolKeys,
  })
  .check(z.meta({ title: 'round tool' }))
