import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import type { ToolBase } from '../tool.ts'

export type VeeTool = ToolBase & {
  readonly shape: 'vee'
  readonly angle: Degrees
  /** The error of the angle; null: the lathe's accuracy for it. */
  readonly angleWithin: Degrees | null
  readonly nose: Length
}
