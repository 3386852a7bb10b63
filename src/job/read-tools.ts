import type * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import type { Tool, ToolBase } from '../tools/tool.ts'
import type { Length } from '../units/length.ts'
import type { Giver } from './read-feature.ts'
import type { toolSchema } from './schema.ts'

type ToolRead = AsRead<z.output<typeof toolSchema>>

export const readTools = (toolbox: object, giver: Giver): Record<string, Tool> => {
  const tools: Record<string, Tool> = {}
  for (const [name, values] of Object.entries(toolbox) as [string, ToolRead | string][]) {
    const tool = typeof values === 'object' ? readTool(name, values, giver(values)) : null
    if (tool) tools[name] = tool
  }
  return tools
}

/** Null where a size is missing; the reason has then been reported. */
const readTool = (name: string, values: ToolRead, given: Given<ToolRead>): Tool | null => {
  toolRules(values, given)
  const reach = values.reach ?? (values.shape === 'corner' ? values.radius : undefined)
  if (!reach) return null
  const base: ToolBase = {
    name,
    reach,
    blank: values.blank ?? null,
    edgeOffset: values['edge-offset'] ?? null,
    bit: values.bit ?? 'hss',
    holderAngle: values['holder-angle'] ?? 0,
    rakeInUse: rakeInUse(values),
    measured: true,
    origin: given.origin,
  }
  switch (values.shape) {
    case 'square':
      return values.width
        ? { ...base, shape: 'square', width: values.width, cornerRadius: values['corner-radius'] ?? 0 }
        : null
    case 'vee':
      return values.angle && values.nose !== undefined
        ? { ...base, shape: 'vee', angle: values.angle, angleWithin: values['angle-within'] ?? null, nose: values.nose }
        : null
    case 'round':
      return values.radius
        ? { ...base, shape: 'round', radius: values.radius, edgeWidth: values['edge-width'] ?? null }
        : null
    case 'corner':
      return values.radius
        ? { ...base, shape: 'corner', radius: values.radius, legOnFace: values['leg-on-face'] ?? null }
        : null
    default:
      return null
  }
}

const rakeInUse = (values: ToolRead): number =>
  values['rake-in-use'] ?? (values['rake-ground'] ?? 0) + (values['holder-angle'] ?? 0)
const slopes = (values: ToolRead): boolean => rakeInUse(values) !== 0

const toolRules = (values: ToolRead, given: Given<ToolRead>): void => {
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
  if (values.shape === 'square' && values.blank && values.width && values.width.nominal > values.blank)
    given.report(
      'blank',
      'impossible',
      'the edge is wider than the blank behind it',
      'give the width of the tool bit itself',
    )
  if (values.shape === 'corner' && values['leg-on-face'] && !slopes(values))
    (given as Given<{ 'leg-on-face'?: Length }>).report(
      'leg-on-face',
      'useless-key',
      'leg-on-face is for a face that slopes, and this tool has no rake in use',
      'say the rake, or take leg-on-face out: both legs are the radius',
    )
  if (values.shape === 'round' && values['edge-width'] && values.radius && values['edge-width'] > 2 * values.radius)
    (given as Given<{ 'edge-width'?: Length }>).report(
      'edge-width',
      'impossible',
      'the edge is wider than its whole circle',
      'give at most twice the radius',
    )
}
