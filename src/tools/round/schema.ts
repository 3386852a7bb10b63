import * as z from 'zod/mini'
import { byDefault, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const roundToolSchema = z
  .strictObject({
    shape: z.literal('round').register(z.globalRegistry, { description: 'A convex round end.' }),
    radius: length('Radius of the end as measured.', '3/32'),
    'edge-width': byDefault('twice the radius', length('Width over which the end is round.', 0.17)),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'round tool' })
