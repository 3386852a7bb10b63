import { depthReached } from '../grind/form.ts'
import type { ToolShape } from '../shape.ts'
import { cornerEdge, rakedCorner } from './edge.ts'
import { cornerGrinding } from './grinding.ts'
import { cornerToolSchema, readCornerTool } from './schema.ts'
import type { CornerTool } from './tool.ts'

export const corner: ToolShape<CornerTool, typeof cornerToolSchema> = {
  schema: cornerToolSchema,
  read: readCornerTool,
  called: 'a corner',
  sizes: ({ radius }) => ({ radius }),
  edge: ({ radius }) => cornerEdge(radius),
  raked: ({ radius, legOnFace }, stance) => rakedCorner(radius, legOnFace ?? radius, stance),
  groundRadius: ({ radius }) => radius,
  // A hollow is finished when its outer tip is on the surface.
  tipDeep: ({ radius, legOnFace, rakeInUse }, { surface }) => depthReached(legOnFace ?? radius, surface / 2, rakeInUse),
  leg: ({ legOnFace }) => legOnFace,
  grinding: cornerGrinding,
}
