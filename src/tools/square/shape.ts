import type { ToolShape } from '../shape.ts'
import { rakedSquare, squareEdge } from './edge.ts'
import { squareGrinding } from './grinding.ts'
import { readSquare, squareToolSchema } from './schema.ts'
import type { SquareTool } from './tool.ts'

export const square: ToolShape<SquareTool, typeof squareToolSchema> = {
  schema: squareToolSchema,
  read: readSquare,
  called: 'a square',
  sizes: ({ width, cornerRadius }) => ({ width: width.aim, radius: cornerRadius > 0 ? cornerRadius : null }),
  edge: ({ width, cornerRadius }) => squareEdge(width.aim, cornerRadius),
  raked: ({ width, cornerRadius }, stance) => (cornerRadius <= 0 ? null : rakedSquare(width.aim, cornerRadius, stance)),
  grinding: squareGrinding,
}
