import type { Dimension } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import type { ToolBase } from '../tool.ts'

export type SquareTool = ToolBase & {
  readonly shape: 'square'
  readonly width: Dimension
  readonly cornerRadius: Length
}
