import type { Edge } from './sheet-shape.ts'
import { slopingEdge } from './sloping.ts'

/**
 * A cutting edge as depth over the offset from its reference point, with the offsets between which it is ground and
 * the stretch on which it is deepest. Every edge here falls away on both sides of that stretch and never rises again,
 * which is what lets a pass across be worked out without stepping through it.
 */
export type EdgeCurve = {
  depth: (u: number) => number
  from: number
  to: number
  peakFrom: number
  peakTo: number
  /** It bulges everywhere, so that of all places on a slanting way there is one that is deepest under a node, and none deeper beyond it. */
  bulges: boolean
}

export function edgeCurve(edge: Edge): EdgeCurve {
  if (edge.face) return slopingEdge(edge, need(edge.rakeInUse), edge.face)
  switch (edge.shape) {
    case 'square':
      return square(need(edge.width), edge.radius ?? 0)
    case 'vee':
      return vee(need(edge.nose), need(edge.angle), need(edge.reach))
    case 'round':
      return round(need(edge.radius), edge.width ?? null)
    case 'corner':
      return corner(need(edge.radius))
  }
}

/** Flat between two quarter circles; their radius may be 0. */
function square(width: number, radius: number): EdgeCurve {
  const depth = (u: number): number => {
    const into = Math.max(0, radius - Math.min(u, width - u))
    return Math.sqrt(Math.max(0, radius * radius - into * into)) - radius
  }
  return { depth, from: 0, to: width, peakFrom: radius, peakTo: width - radius, bulges: true }
}

function vee(nose: number, included: number, reach: number): EdgeCurve {
  const slope = Math.tan((included * Math.PI) / 360)
  const depth = (u: number): number => (u < 0 ? u / slope : u > nose ? (nose - u) / slope : 0)
  return { depth, from: -reach * slope, to: nose + reach * slope, peakFrom: 0, peakTo: nose, bulges: true }
}

function round(radius: number, width: number | null): EdgeCurve {
  const half = Math.min(radius, width === null || width <= 0 ? radius : width / 2)
  const depth = (u: number): number => Math.sqrt(Math.max(0, radius * radius - u * u)) - radius
  return { depth, from: -half, to: half, peakFrom: 0, peakTo: 0, bulges: true }
}

function corner(radius: number): EdgeCurve {
  const depth = (u: number): number => {
    const rest = radius - u
    return radius - Math.sqrt(Math.max(0, radius * radius - rest * rest))
  }
  return { depth, from: 0, to: radius, peakFrom: 0, peakTo: 0, bulges: false }
}

function need(value: number | null | undefined): number {
  if (value === null || value === undefined) throw new Error('the edge lacks a size that its shape needs')
  return value
}
