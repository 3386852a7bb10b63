import * as z from 'zod/mini'
import { length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const cornerToolSchema = z
  .strictObject({
    shape: z
      .literal('corner')
      .register(z.globalRegistry, { description: 'A concave quarter circle that rounds a corner.' }),
    radius: length('Radius of the quarter circle as measured.'),
    'leg-on-face': z.optional(
      length(
        'Only with rake in use: the leg that goes down the work, as measured along the sloping face, where the quarter was stretched to that for its radius to come out. By default the radius.',
      ),
    ),
    reach: z.optional(reach('How deep the ground end can go before the shank touches; by default the radius.')),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'corner tool' })
