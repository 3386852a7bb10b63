import type { Edge, Form } from '../moves/form.ts'
import { cornerEdge } from './corner/edge.ts'
import { roundEdge } from './round/edge.ts'
import { squareEdge } from './square/edge.ts'
import type { Tool } from './tool.ts'
import { veeEdge } from './vee/edge.ts'

/** The cutting edge of a tool as it measures, with the shank behind it. pm, relative to the tool's reference point. */
export function edgeOf(tool: Tool): Edge {
  const pieces = cuttingEdge(tool)
  const from = pieces[0]!.from
  const to = pieces[pieces.length - 1]!.to
  return { pieces, reach: tool.reach, shank: shank(tool, from, to) }
}

function cuttingEdge(tool: Tool): Form {
  switch (tool.shape) {
    case 'square':
      return squareEdge(tool.width.aim, tool.cornerRadius)
    case 'vee':
      return veeEdge(tool.nose, tool.angle, tool.reach)
    case 'round':
      return roundEdge(tool.radius, tool.edgeWidth)
    case 'corner':
      return cornerEdge(tool.radius)
  }
}

/** A blank stands with the edge in its middle unless the tool entry says where; without a blank it is as wide as the edge. */
function shank(tool: Tool, from: number, to: number): { from: number; to: number } {
  if (tool.blank === null || tool.blank <= to - from) return { from, to }
  if (tool.edgeOffset !== null) return { from: from - tool.edgeOffset, to: from - tool.edgeOffset + tool.blank }
  const spare = (tool.blank - (to - from)) / 2
  return { from: from - spare, to: to + spare }
}
