import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import type { SHAPES } from './registry.ts'

export type { CornerTool } from './corner/tool.ts'
export type { RoundTool } from './round/tool.ts'
export type { SquareTool } from './square/tool.ts'
export type { VeeTool } from './vee/tool.ts'

export type ToolBase = {
  readonly name: string
  readonly reach: Length
  readonly blank: Length | null
  /**
   * From the blank's tailstock-side face to the reference-side end of the edge; null = edge in the middle of the blank.
   */
  readonly edgeOffset: Length | null
  readonly bit: 'hss' | 'carbide'
  readonly holderAngle: Degrees
  /** Rake in use = ground rake + holder's tilt, degrees. */
  readonly rakeInUse: Degrees
  /** false for a tool that must still be ground. */
  readonly measured: boolean
  readonly origin: Origin
}

/** A tool of any shape, as the readers of the shapes return it. */
export type Tool = NonNullable<ReturnType<(typeof SHAPES)[keyof typeof SHAPES]['read']>>
