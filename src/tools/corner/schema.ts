import * as z from 'zod/mini'
import { length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const cornerToolSchema = z
  .strictObject({
    shape: z.literal('corner').check(z.describe('A concave quarter circle that rounds a corner.')),
    radius: length('Radius of the quarter circle as measured.'),
    reach: z.optional(reach('How deep the ground end can go before the shank touches; by default the radius.')),
    ...commonToolKeys,
  })
  .check(z.meta({ title: 'corner tool' }))
