import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { angle, angleFromZero, byDefault, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'
import type { ToolBase } from '../tool.ts'
import type { VeeTool } from './tool.ts'

export const veeToolSchema = z
  .strictObject({
    shape: z.literal('vee').register(z.globalRegistry, { description: 'A pointed edge with a flat nose.' }),
    angle: angle('Included angle between the flanks, more than 1 and less than 179 degrees.', 38, 1, 179),
    nose: length('Width of the flat at the nose as measured; 0 for a keen point.', 0.15, 'zero or more'),
    'angle-within': byDefault(
      'tool-angle of the lathe: half a degree, as by protractor',
      angleFromZero('How near that angle is known, degrees: less by a template or a sine bar.', 0.25, 10),
    ),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'vee tool' })

export const readVee = (
  given: Given<AsRead<z.output<typeof veeToolSchema>>>,
  base: Omit<ToolBase, 'reach'>,
): VeeTool | null => {
  const { angle, nose, reach, 'angle-within': angleWithin } = given.values
  return reach && angle && nose !== undefined
    ? { ...base, reach, shape: 'vee', angle, angleWithin: angleWithin ?? null, nose }
    : null
}
