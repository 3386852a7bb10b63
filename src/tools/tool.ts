import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Degrees, Dimension } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

export type ToolBase = {
  readonly name: string
  readonly reach: Length
  readonly blank: Length | null
  /** From the blank's tailstock-side face to the reference-side end of the edge; null = edge in the middle of the blank. */
  readonly edgeOffset: Length | null
  readonly bit: 'hss' | 'carbide'
  readonly holderAngle: Degrees
  /** Degrees in use = ground + holder's tilt. */
  readonly rakeInUse: Degrees
  /** false for a tool that is still to be ground. */
  readonly measured: boolean
  readonly origin: Origin
}
export type SquareTool = ToolBase & {
  readonly shape: 'square'
  readonly width: Dimension
  readonly cornerRadius: Length
}
export type VeeTool = ToolBase & {
  readonly shape: 'vee'
  readonly angle: Degrees
  /** How near the angle is known; null: as the lathe's accuracy has it. */
  readonly angleWithin: Degrees | null
  readonly nose: Length
}
export type RoundTool = ToolBase & {
  readonly shape: 'round'
  readonly radius: Length
  readonly edgeWidth: Length | null
}
export type CornerTool = ToolBase & {
  readonly shape: 'corner'
  readonly radius: Length
  /** With rake: the leg that goes down the work, measured along the sloping face, where it was ground to another length than the radius. */
  readonly legOnFace: Length | null
}
export type Tool = SquareTool | VeeTool | RoundTool | CornerTool
