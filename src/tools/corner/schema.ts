import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { byDefault, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'
import type { ToolBase } from '../tool.ts'
import type { CornerTool } from './tool.ts'

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

export const readCornerTool = (
  given: Given<AsRead<z.output<typeof cornerToolSchema>>>,
  base: Omit<ToolBase, 'reach'>,
): CornerTool | null => {
  const { radius, reach = radius, 'leg-on-face': legOnFace } = given.values
  if (legOnFace && base.rakeInUse === 0)
    given.report(
      'leg-on-face',
      'useless-key',
      'leg-on-face is for a face that slopes, and this tool has no rake in use',
      'say the rake, or take leg-on-face out: both legs are the radius',
    )
  return reach && radius ? { ...base, reach, shape: 'corner', radius, legOnFace: legOnFace ?? null } : null
}
