import { toolBitSquares } from '../handbook/tool-bits.ts'
import { say } from '../phrase/say.ts'
import { SHAPES } from '../tools/registry.ts'
import type { Tool } from '../tools/tool.ts'
import { INCH, type Length, MM } from '../units/length.ts'
import type { Bench, Refusal } from './draft.ts'
import type { Feature } from './feature.ts'

/**
 * The tool the feature names, checked for its shape; null if the job leaves the tool out; a refusal if the shape cannot
 * cut the form.
 */
export function namedTool<S extends Tool['shape']>(
  bench: Bench,
  feature: Feature,
  shape: S,
): Extract<Tool, { shape: S }> | null | Refusal {
  if (feature.tool === null) return null
  const tool = bench.tools[feature.tool]
  if (tool === undefined) throw new Error(`no tool is named ${feature.tool}: the reader should have refused it`)
  if (tool.shape === shape) return tool as Extract<Tool, { shape: S }>
  return {
    code: 'wrong-shape',
    reason: say`tool "${tool.name}" is ${article(tool.shape)} tool; this form is cut with ${article(shape)} tool`,
    remedy: say`name ${article(shape)} tool, or leave tool: out and the sheet says which one to grind`,
  }
}

const article = (shape: Tool['shape']): string => SHAPES[shape].called

/**
 * What every tool that must still be ground has in common; `width` is the least width of blank that carries the edge.
 * pm.
 */
export function toGrind(bench: Bench, feature: Feature, width: Length, reach: Length) {
  return {
    name: `to grind: ${feature.name}`,
    reach,
    blank: smallestBlank(bench, width),
    edgeOffset: null,
    bit: 'hss' as const,
    holderAngle: 0,
    rakeInUse: 0,
    measured: false,
    origin: feature.origin,
  }
}

/** Smallest stock square that carries an edge; null for an edge wider than any. */
function smallestBlank(bench: Bench, width: Length): Length | null {
  const squares = toolBitSquares(bench.units).map((size) => size * (bench.units === 'inch' ? INCH : MM))
  return squares.find((size) => size >= width) ?? null
}

export const isRefusal = (value: unknown): value is Refusal =>
  typeof value === 'object' && value !== null && 'remedy' in value
