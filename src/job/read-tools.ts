import type * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import { readAs } from '../tools/registry.ts'
import type { Tool } from '../tools/tool.ts'
import type { GivenLookup } from './read-feature.ts'
import type { toolSchema } from './schema.ts'

type ToolRead = AsRead<z.output<typeof toolSchema>>

export const readTools = (toolbox: object, givenOf: GivenLookup): Record<string, Tool> => {
  const tools: Record<string, Tool> = {}
  for (const [name, values] of Object.entries(toolbox) as [string, ToolRead | string][]) {
    const tool = typeof values === 'object' ? readTool(name, values, givenOf(values)) : null
    if (tool) tools[name] = tool
  }
  return tools
}

/** Null if a size is missing; the reason has then been reported. */
const readTool = (name: string, values: ToolRead, given: Given<ToolRead>): Tool | null => {
  toolRules(given)
  if (values.shape === undefined) return null
  return readAs(values.shape, given, {
    name,
    blank: values.blank ?? null,
    edgeOffset: values['edge-offset'] ?? null,
    bit: values.bit ?? 'hss',
    holderAngle: values['holder-angle'] ?? 0,
    rakeInUse: values['rake-in-use'] ?? (values['rake-ground'] ?? 0) + (values['holder-angle'] ?? 0),
    measured: true,
    origin: given.origin,
  })
}

/** The rules for every shape; the rules of one shape are in its folder. */
const toolRules = (given: Given<ToolRead>): void => {
  if (given.has('rake-ground') && given.has('rake-in-use'))
    given.report(
      'rake-in-use',
      'too-many-keys',
      'rake-ground and rake-in-use together say the rake twice',
      'keep one: in use = ground + holder-angle',
    )
  if (given.has('edge-offset') && !given.has('blank'))
    given.report(
      'edge-offset',
      'useless-key',
      'edge-offset says where the edge is on the blank, and no blank is given',
      'give blank as well, or take edge-offset out',
    )
}
