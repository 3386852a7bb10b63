import type { Length } from '../units/length.ts'
import type { Stance } from './raked.ts'
import { shapeOf } from './registry.ts'
import type { Tool } from './tool.ts'

export { legToGrind } from './corner/standing.ts'
export { roundInWork, roundToGrind } from './round/standing.ts'
export { veeInWork, veeToGrind } from './vee/standing.ts'

/**
 * The form that a tool cuts, as far as the slope of the face needs it: diameter of the surface, depth of the form. pm.
 */
export type EdgeForm = { readonly surface: Length; readonly depth: Length }

/** Where the tip of the face is when the form is finished. */
export function stanceOf(tool: Tool, form: EdgeForm): Stance {
  const deep = shapeOf(tool).tipDeep?.(tool, form) ?? form.depth
  return { rake: tool.rakeInUse, floor: form.surface / 2 - deep }
}
