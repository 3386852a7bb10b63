import * as z from 'zod/mini'
import type { AsRead, Given } from '../../diagnostics/given.ts'
import { byDefault, length } from '../../units/measure-schema.ts'
import { commonToolKeys, reach } from '../common-schema.ts'
import type { ToolBase } from '../tool.ts'
import type { RoundTool } from './tool.ts'

export const roundToolSchema = z
  .strictObject({
    shape: z.literal('round').register(z.globalRegistry, { description: 'A convex round end.' }),
    radius: length('Radius of the end as measured.', '3/32'),
    'edge-width': byDefault('twice the radius', length('Width over which the end is round.', 0.17)),
    reach: reach(),
    ...commonToolKeys,
  })
  .register(z.globalRegistry, { title: 'round tool' })

export const readRound = (
  given: Given<AsRead<z.output<typeof roundToolSchema>>>,
  base: Omit<ToolBase, 'reach'>,
): RoundTool | null => {
  const { radius, reach, 'edge-width': edgeWidth } = given.values
  if (edgeWidth && radius && edgeWidth > 2 * radius)
    given.report('edge-width', 'impossible', 'the edge is wider than its whole circle', 'give at most twice the radius')
  return reach && radius ? { ...base, reach, shape: 'round', radius, edgeWidth: edgeWidth ?? null } : null
}
