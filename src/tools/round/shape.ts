import type { ToolShape } from '../shape.ts'
import { rakedRound, roundEdge, roundHalfWidth } from './edge.ts'
import { roundGrinding } from './grinding.ts'
import { readRound, roundToolSchema } from './schema.ts'
import { roundInWork } from './standing.ts'
import type { RoundTool } from './tool.ts'

export const round: ToolShape<RoundTool, typeof roundToolSchema> = {
  schema: roundToolSchema,
  read: readRound,
  called: 'a round',
  sizes: ({ radius, edgeWidth }) => ({ width: edgeWidth, radius }),
  edge: ({ radius, edgeWidth }) => roundEdge(radius, edgeWidth),
  raked: ({ radius, edgeWidth }, stance) => rakedRound(radius, roundHalfWidth(radius, edgeWidth), stance),
  groundRadius: ({ radius }) => radius,
  inWork: ({ radius }, { depth }, stance) => ({ radius: Math.round(roundInWork(radius, depth, stance)) }),
  grinding: roundGrinding,
}
