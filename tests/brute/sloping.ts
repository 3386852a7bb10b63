import type { EdgeCurve } from './edges.ts'
import type { Edge } from './sheet-shape.ts'

/**
 * An edge on a face that slopes. The face is a plane through the tip, which stands on center at the floor of the form; a point so far back on it lies
 * as far from the axis as Pythagoras says of its level and its plumb part, and cuts there: so much higher than the tip.
 */
export function slopingEdge(edge: Edge, rake: number, face: NonNullable<Edge['face']>): EdgeCurve {
  const turn = (rake * Math.PI) / 180
  const [level, plumb] = [Math.cos(turn), Math.sin(turn)]
  const above = (back: number): number => Math.sqrt((face.floor + back * level) ** 2 + (back * plumb) ** 2) - face.floor
  const given = (value: number | null): number => {
    if (value === null) throw new Error('a sloping edge lacks a size that its shape needs')
    return value
  }
  const back = (radius: number, beside: number): number =>
    radius - Math.sqrt(Math.max(0, radius * radius - beside * beside))
  if (edge.shape === 'vee') {
    const slope = Math.tan((given(face.angle) * Math.PI) / 360)
    const nose = given(edge.nose)
    const half = backUnder(given(edge.reach), above) * slope
    const beside = (u: number): number => Math.max(0, -u, u - nose)
    return {
      depth: (u) => -above(beside(u) / slope),
      from: -half,
      to: nose + half,
      peakFrom: 0,
      peakTo: nose,
      bulges: true,
    }
  }
  const radius = given(face.radius)
  if (edge.shape === 'round') {
    const half = Math.min(radius, edge.width === null || edge.width <= 0 ? radius : edge.width / 2)
    return { depth: (u) => -above(back(radius, u)), from: -half, to: half, peakFrom: 0, peakTo: 0, bulges: true }
  }
  if (edge.shape === 'corner') {
    const leg = face.leg ?? radius
    const down = above(leg)
    const along = (u: number): number => (leg / radius) * Math.sqrt(Math.max(0, radius * radius - (radius - u) ** 2))
    return { depth: (u) => down - above(along(u)), from: 0, to: radius, peakFrom: 0, peakTo: 0, bulges: false }
  }
  const width = given(edge.width)
  const beyond = (u: number): number => Math.max(0, radius - u, u - (width - radius))
  return {
    depth: (u) => -above(back(radius, beyond(u))),
    from: 0,
    to: width,
    peakFrom: radius,
    peakTo: width - radius,
    bulges: true,
  }
}

/** How far back on the face the edge is so much higher than its tip: by halving. */
function backUnder(height: number, above: (back: number) => number): number {
  let [low, high] = [0, 4 * height]
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2
    if (above(middle) < height) low = middle
    else high = middle
  }
  return low
}
