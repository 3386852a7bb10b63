import type { StatedEdge } from '../moves/stated.ts'
import { shapeOf } from './registry.ts'
import { type EdgeForm, stanceOf } from './standing.ts'
import type { Tool } from './tool.ts'

/** A tool's sizes as the sheet states them; a size that the shape does not have is null. */
export function statedEdge(tool: Tool, form: EdgeForm): StatedEdge {
  const onFace = measuredEdge(tool)
  if (tool.rakeInUse === 0 || (onFace.angle === null && onFace.radius === null)) return onFace
  const shape = shapeOf(tool)
  const stance = stanceOf(tool, form)
  const leg = shape.leg?.(tool) ?? null
  const stretched = leg === null ? {} : { leg }
  const face = { angle: onFace.angle, radius: onFace.radius, ...stretched, floor: stance.floor }
  return { ...onFace, ...shape.inWork?.(tool, form, stance), face }
}

/** Its sizes on the face, for any form. */
export function measuredEdge(tool: Tool): StatedEdge {
  return {
    shape: tool.shape,
    width: null,
    nose: null,
    angle: null,
    radius: null,
    ...shapeOf(tool).sizes(tool),
    reach: tool.reach,
    blank: tool.blank,
    edgeOffset: tool.edgeOffset,
    rakeInUse: tool.rakeInUse,
    measured: tool.measured,
  }
}
