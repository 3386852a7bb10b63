import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import type { ToolBase } from '../tool.ts'

export type VeeTool = ToolBase & {
  readonly shape: 'vee'
  readonly angle: Degrees
  /** How near the angle is known; null: as the lathe's accuracy has it. */
  readonly angleWithin: Degrees | null
  readonly nose: Length
}
