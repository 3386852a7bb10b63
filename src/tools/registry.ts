import type { Given } from '../diagnostics/given.ts'
import type { Shape } from '../moves/shapes.ts'
import { corner } from './corner/shape.ts'
import { round } from './round/shape.ts'
import type { ToolShape } from './shape.ts'
import { square } from './square/shape.ts'
import type { Tool, ToolBase } from './tool.ts'
import { vee } from './vee/shape.ts'

/** Every shape of tool, in the order in which they are listed: a new one is a folder and an entry here. */
export const SHAPES = { square, vee, round, corner } as const satisfies Readonly<Record<Shape, unknown>>

// The compiler cannot see that a tool, or a mapping of a file, belongs to the shape it names: it is asserted here, and
// nowhere else.

export const shapeOf = <T extends Tool>(tool: T): ToolShape<T, never> =>
  SHAPES[tool.shape] as unknown as ToolShape<T, never>

/** Null if a size is missing; the reason has then been reported. */
export const readAs = (shape: Shape, given: Given<object>, base: Omit<ToolBase, 'reach'>): Tool | null => {
  const read = SHAPES[shape].read as unknown as (given: Given<object>, base: Omit<ToolBase, 'reach'>) => Tool | null
  return read(given, base)
}
