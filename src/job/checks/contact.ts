import type { Draft } from '../../features/draft.ts'
import type { Edge, Piece } from '../../moves/form.ts'
import { INCH, type Length, MM, type Units } from '../../units/length.ts'
import { deepestBelowSurface } from './refusals.ts'

/**
 * The length of the edge that is in the work at once when it is as deep as it goes, measured along the edge: floor, flanks, arcs and corners. Of a V that
 * is fed along a flank, or that is wider than its tool, one flank at a time; of steps as much as a layer is deep; of a stepped form nothing, as each step is a light cut. pm.
 */
export const edgeInWork = ({ cuts, tool, ...draft }: Draft, edge: Edge): Length => {
  if (cuts.style === 'steps') return 0
  const lowest = Math.max(...edge.pieces.map(deepest))
  const deep = deepestBelowSurface({ cuts, tool, ...draft })
  // Steps go down in layers: above the last of them the flanks of the tool are free.
  const top = lowest - (cuts.style === 'stairs' ? Math.min(deep, cuts.layer ?? deep) : deep)
  const lengths = edge.pieces.map((piece) => ({ length: lengthBelow(piece, top), level: isFloor(piece) }))
  const whole = lengths.reduce((sum, { length }) => sum + length, 0)
  const oneFlank = cuts.style === 'flank' || (cuts.style === 'plunge' && cuts.last > cuts.first)
  if (tool.shape !== 'vee' || !oneFlank) return whole
  const sides = lengths.filter(({ level }) => !level).map(({ length }) => length)
  return whole - Math.min(...sides)
}

/** A V that takes both of its flanks in one plunge: it could be fed along one of them instead. */
export const takesBothFlanks = ({ tool, cuts }: Pick<Draft, 'tool' | 'cuts'>): boolean =>
  tool.shape === 'vee' && cuts.style === 'plunge' && cuts.last === cuts.first

const isFloor = ({ curve }: Piece): boolean => curve.kind === 'line' && curve.d0 === curve.d1

const deepest = ({ from, to, curve }: Piece): Length => {
  if (curve.kind === 'line') return Math.max(curve.d0, curve.d1)
  const { zc, dc, r, side } = curve
  const at = (z: Length): Length => dc + side * Math.sqrt(Math.max(0, r ** 2 - (z - zc) ** 2))
  const bottom = side === 1 && from <= zc && zc <= to ? [dc + r] : []
  return Math.max(at(from), at(to), ...bottom)
}

/** How long a piece of the edge is below a level. */
const lengthBelow = ({ from, to, curve }: Piece, top: Length): Length => {
  if (curve.kind === 'line') {
    const [high, low] = [Math.min(curve.d0, curve.d1), Math.max(curve.d0, curve.d1)]
    const whole = Math.hypot(to - from, low - high)
    if (high >= top) return whole
    return low <= top ? 0 : (whole * (low - top)) / (low - high)
  }
  const { zc, dc, r, side } = curve
  // Of a hollow edge, as a corner tool has, all is counted: it bears from tip to tip.
  const half = side === -1 || top <= dc ? r : Math.sqrt(Math.max(0, r ** 2 - (top - dc) ** 2))
  const within = (z: Length): number => Math.asin(Math.max(-half, Math.min(half, z - zc)) / r)
  return r * (within(to) - within(from))
}

/**
 * How much of an edge a lathe forms with before it chatters: what its file says for mild steel, by default half an inch (12 mm); twice that where metal
 * is cut freely, two thirds where it is tough. Never more than a quarter of the diameter. Common practice, no source; no published rule was found.
 */
export const mostEdge = (surface: Length, ofLathe: Length | undefined, material: string, units: Units): Length =>
  Math.min(surface / 4, (ofLathe ?? defaultWidestEdge[units]) * ease(material))

const defaultWidestEdge: Readonly<Record<Units, Length>> = { inch: INCH / 2, mm: 12 * MM }

const ease = (material: string): number => {
  if (/free-machining stainless/i.test(material)) return 1
  if (/brass|alumin|magnesium|free-machining|plastic|nylon|acetal|wood/i.test(material)) return 2
  return /stainless|titanium|tool steel|alloy steel|hard|nickel/i.test(material) ? 2 / 3 : 1
}
