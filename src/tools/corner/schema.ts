import * as z from 'zod/mini'
import { byDefault, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'

export const cornerToolSchema = z
  .strictObject({
    shape: z
      .literal('corner')
      .register(z.globalRegistry, { description: 'A concave quarter circle that rounds a corner.' }),
    radius: length('Radius of the quarter circle as measured.', '1/8'),
    'leg-on-face': byDefault(
      'the radius',
      length(
        'Only with rake in use: how long the leg that goes down the work was ground along the sloping face, for the radius to come out.',
        0.13,
      ),
    ),
    reach: byDefault('the radius', reach()),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'corner tool' })
