import type { Edge, Form } from '../moves/form.ts'
import type { Length } from '../units/length.ts'
import { shapeOf } from './registry.ts'
import { type EdgeForm, stanceOf } from './standing.ts'
import type { Tool } from './tool.ts'

/**
 * The cutting edge of a tool as it meets the work, with the shank behind it. pm, relative to the tool's reference
 * point. Its sizes are measured on the face; with rake in use the face slopes, and the edge is worked out for the
 * finished form.
 */
export function edgeOf(tool: Tool, form: EdgeForm): Edge {
  const shape = shapeOf(tool)
  const raked = tool.rakeInUse === 0 ? null : shape.raked(tool, stanceOf(tool, form))
  const pieces = raked ?? shape.edge(tool)
  const from = pieces[0]!.from
  const to = pieces[pieces.length - 1]!.to
  const edge = { pieces, reach: tool.reach, shank: shank(tool, from, to), ...shape.known?.(tool) }
  return raked === null ? edge : { ...edge, ground: shape.groundRadius?.(tool) ?? null }
}

/**
 * The edge is in the middle of the blank unless the tool entry says where it is; without a blank the shank is as wide
 * as the edge.
 */
function shank(tool: Tool, from: number, to: number): { from: number; to: number } {
  if (tool.blank === null || tool.blank <= to - from) return { from, to }
  if (tool.edgeOffset !== null) return { from: from - tool.edgeOffset, to: from - tool.edgeOffset + tool.blank }
  const spare = (tool.blank - (to - from)) / 2
  return { from: from - spare, to: to + spare }
}

/** Depth of an edge at an offset from its reference point, pm; outside the edge, the depth of its nearer end. */
export function edgeDepth(pieces: Form, offset: Length): Length {
  const piece = pieces.find(({ to }) => to >= offset) ?? pieces.at(-1)!
  const u = Math.min(Math.max(offset, piece.from), piece.to)
  const { curve } = piece
  if (curve.kind === 'line')
    return curve.z1 === curve.z0
      ? Math.max(curve.d0, curve.d1)
      : curve.d0 + ((curve.d1 - curve.d0) * (u - curve.z0)) / (curve.z1 - curve.z0)
  return curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (u - curve.zc) ** 2))
}
