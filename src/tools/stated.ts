import type { StatedEdge } from '../moves/stated.ts'
import { roundStands, type StandsIn, stanceOf, veeStands } from './standing.ts'
import type { Tool } from './tool.ts'

/** A tool's sizes as the sheet states them; a size that the shape does not have is null. */
export function statedEdge(tool: Tool, form: StandsIn): StatedEdge {
  const onFace = measuredEdge(tool)
  if (tool.rakeInUse === 0 || (onFace.angle === null && onFace.radius === null)) return onFace
  const stance = stanceOf(tool, form)
  const stretched = tool.shape === 'corner' && tool.legOnFace !== null ? { leg: tool.legOnFace } : {}
  const face = { angle: onFace.angle, radius: onFace.radius, ...stretched, floor: stance.floor }
  const angle = tool.shape === 'vee' ? toSeconds(veeStands(tool.angle, form.depth, stance)) : null
  const radius = tool.shape === 'round' ? Math.round(roundStands(tool.radius, form.depth, stance)) : onFace.radius
  return { ...onFace, angle, radius, face }
}

/** Finer than any protractor shows. */
const toSeconds = (angle: number): number => Math.round(angle * 3600) / 3600

/** On its face, whatever form it cuts. */
export function measuredEdge(tool: Tool): StatedEdge {
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
