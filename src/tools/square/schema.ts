import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { byDefault, dimension, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'
import type { ToolBase } from '../tool.ts'
import type { SquareTool } from './tool.ts'

export const squareToolSchema = z
  .strictObject({
    shape: z.literal('square').register(z.globalRegistry, { description: 'A straight edge, square to the work.' }),
    width: dimension('Width of the edge as measured.', '0.148 ±0.0005'),
    'corner-radius': byDefault('0', length('Radius on both corners of the edge as measured.', 0.01, 'zero or more')),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'square tool' })

export const readSquare = (
  given: Given<AsRead<z.output<typeof squareToolSchema>>>,
  base: Omit<ToolBase, 'reach'>,
): SquareTool | null => {
  const { width, blank, reach, 'corner-radius': cornerRadius } = given.values
  if (blank && width && width.nominal > blank)
    given.report(
      'blank',
      'impossible',
      'the edge is wider than the blank behind it',
      'give the width of the tool bit itself',
    )
  return reach && width ? { ...base, reach, shape: 'square', width, cornerRadius: cornerRadius ?? 0 } : null
}
