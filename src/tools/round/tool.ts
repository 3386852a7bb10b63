import type { Length } from '../../units/length.ts'
import type { ToolBase } from '../tool.ts'

export type RoundTool = ToolBase & {
  readonly shape: 'round'
  readonly radius: Length
  readonly edgeWidth: Length | null
}
