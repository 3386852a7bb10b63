import type { Length } from '../../units/length.ts'
import type { ToolBase } from '../tool.ts'

export type CornerTool = ToolBase & {
  readonly shape: 'corner'
  readonly radius: Length
  /**
   * With rake: the leg that goes down the work, measured along the sloping face, if it was ground to another length
   * than the radius.
   */
  readonly legOnFace: Length | null
}
