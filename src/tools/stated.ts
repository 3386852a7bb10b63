import type { StatedEdge } from '../moves/stated.ts'
import type { Tool } from './tool.ts'

/** A tool's sizes as the sheet states them; a size that the shape does not have is null. */
export function statedEdge(tool: Tool): StatedEdge {
  return {
    shape: tool.shape,
    width: tool.shape === 'square' ? tool.width.aim : tool.shape === 'round' ? tool.edgeWidth : null,
    nose: tool.shape === 'vee' ? tool.nose : null,
    angle: tool.shape === 'vee' ? tool.angle : null,
    radius:
      tool.shape === 'round' || tool.shape === 'corner'
        ? tool.radius
        : tool.shape === 'square' && tool.cornerRadius > 0
          ? tool.cornerRadius
          : null,
    reach: tool.reach,
    blank: tool.blank,
    edgeOffset: tool.edgeOffset,
    rakeInUse: tool.rakeInUse,
    measured: tool.measured,
  }
}
