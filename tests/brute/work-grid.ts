import type { EdgeCurve } from './edges.ts'
import type { PartStep, Sheet } from './sheet-shape.ts'

/**
 * The work as radii on a grid along its length. The nodes stand a crooked fraction of a cell off the whole cells, so
 * that no wall of a drawing in 64ths or thousandths falls on a node and rounding cannot decide which side it is on.
 */
export type WorkGrid = { step: number; offset: number; count: number; raw: Float64Array; now: Float64Array }

export type Touch = { removed: number; first: number; last: number; buried: number }

const CROOKED = 0.381966

/** The stock does not change between two replays of a sheet: `raw` may be handed on from the first. */
export function gridOf(sheet: Sheet, before: WorkGrid | null = null): WorkGrid {
  if (before !== null) return { ...before, now: before.raw.slice() }
  const step = sheet.units === 'inch' ? 0.0005 : 0.01
  const offset = step * CROOKED
  const end = sheet.part.steps.reduce((far, part) => Math.max(far, part.to), 0)
  const count = Math.max(1, Math.floor((end - offset) / step) + 1)
  const raw = new Float64Array(count)
  for (const part of sheet.part.steps) fillStep(raw, step, offset, part)
  return { step, offset, count, raw, now: raw.slice() }
}

function fillStep(raw: Float64Array, step: number, offset: number, part: PartStep): void {
  const first = Math.max(0, Math.ceil((part.from - offset) / step))
  const last = Math.min(raw.length - 1, Math.floor((part.to - offset) / step))
  raw.fill((part.measured ?? part.measuredDiameter ?? part.diameter) / 2, first, last + 1)
}

/** Removes what the edge reaches while its reference point stands at (z, tip radius), and says how much that was. */
export function cutAt(grid: WorkGrid, edge: EdgeCurve, z: number, tip: number): Touch {
  return sweepLevel(grid, edge, z, z, tip)
}

/** The same for a move along the work at one depth: under each node the edge's deepest point that passed over it counts. */
export function sweepLevel(grid: WorkGrid, edge: EdgeCurve, zA: number, zB: number, tip: number): Touch {
  const zLow = Math.min(zA, zB)
  const zHigh = Math.max(zA, zB)
  const { step, offset, now, raw } = grid
  const first = Math.max(0, Math.ceil((zLow + edge.from - offset) / step))
  const last = Math.min(grid.count - 1, Math.floor((zHigh + edge.to - offset) / step))
  const touch = untouched()
  const deepest = tip - mostOf(edge)
  for (let i = first; i <= last; i++) {
    // Where not even the deepest point of the edge would reach, nothing is worked out.
    if (now[i]! - deepest <= 1e-9 && raw[i]! - tip <= touch.buried) continue
    const z = offset + i * step
    const nearest = nearestToPeak(Math.max(edge.from, z - zHigh), Math.min(edge.to, z - zLow), edge)
    const radius = Math.max(0, tip - edge.depth(nearest))
    if (radius < raw[i]! && raw[i]! - tip > touch.buried) touch.buried = raw[i]! - tip
    const gone = now[i]! - radius
    if (gone <= 1e-9) continue
    now[i] = radius
    if (gone > touch.removed) touch.removed = gone
    if (i < touch.first) touch.first = i
    touch.last = i
  }
  return touch
}

export const untouched = (): Touch => ({ removed: 0, first: Number.POSITIVE_INFINITY, last: -1, buried: 0 })

const mostOf = (edge: EdgeCurve): number => Math.max(edge.depth(edge.peakFrom), edge.depth(edge.peakTo))

export type Place = { z: number; tip: number }

/**
 * A move along the work and into it at once, as if the edge stood still at so many places on the way, evenly spaced. Under an edge that bulges these
 * places lie, for one node, on a curve with a single lowest point, which is found by halving.
 */
export function sweepSlanting(grid: WorkGrid, edge: EdgeCurve, from: Place, to: Place, pieces: number): Touch {
  const { step, offset, now, raw } = grid
  const [along, inward] = [(to.z - from.z) / pieces, (to.tip - from.tip) / pieces]
  const most = mostOf(edge)
  const first = Math.max(0, Math.ceil((Math.min(from.z, to.z) + edge.from - offset) / step))
  const last = Math.min(grid.count - 1, Math.floor((Math.max(from.z, to.z) + edge.to - offset) / step))
  const touch = untouched()
  for (let i = first; i <= last; i++) {
    const z = offset + i * step
    const ends = [(z - edge.to - from.z) / along, (z - edge.from - from.z) / along]
    const begin = Math.max(0, Math.ceil(Math.min(ends[0]!, ends[1]!)))
    const end = Math.min(pieces, Math.floor(Math.max(ends[0]!, ends[1]!)))
    if (begin > end) continue
    const low = inward < 0 ? end : begin
    const tip = from.tip + low * inward
    if (now[i]! - (tip - most) <= 1e-9 && raw[i]! - tip <= touch.buried) continue
    const radius = (k: number): number => from.tip + k * inward - edge.depth(z - from.z - k * along)
    const at = lowestOf(radius, begin, end)
    const reached = Math.max(0, radius(at))
    if (reached < raw[i]! && raw[i]! - tip > touch.buried) {
      const under = lastUnder(radius, at, low, raw[i]!)
      touch.buried = Math.max(touch.buried, raw[i]! - (from.tip + under * inward))
    }
    const gone = now[i]! - reached
    if (gone <= 1e-9) continue
    now[i] = reached
    if (gone > touch.removed) touch.removed = gone
    if (i < touch.first) touch.first = i
    touch.last = i
  }
  return touch
}

function lowestOf(radius: (k: number) => number, begin: number, end: number): number {
  let [low, high] = [begin, end]
  while (low < high) {
    const middle = (low + high) >> 1
    if (radius(middle) <= radius(middle + 1)) high = middle
    else low = middle + 1
  }
  return low
}

/** From the lowest place, which is under the limit, the last one toward `end` that is. */
function lastUnder(radius: (k: number) => number, lowest: number, end: number, limit: number): number {
  if (radius(end) < limit) return end
  let [under, over] = [lowest, end]
  while (Math.abs(over - under) > 1) {
    const middle = (under + over) >> 1
    if (radius(middle) < limit) under = middle
    else over = middle
  }
  return under
}

function nearestToPeak(low: number, high: number, edge: EdgeCurve): number {
  if (high < edge.peakFrom) return high
  return low > edge.peakTo ? low : Math.min(high, Math.max(low, edge.peakFrom))
}

/** The largest radius that stands, or stood at the start, anywhere under the edge between two places. */
export function highest(grid: WorkGrid, edge: EdgeCurve, zA: number, zB: number, radii: Float64Array): number {
  const first = Math.max(0, Math.ceil((Math.min(zA, zB) + edge.from - grid.offset) / grid.step))
  const last = Math.min(grid.count - 1, Math.floor((Math.max(zA, zB) + edge.to - grid.offset) / grid.step))
  let most = 0
  for (let i = first; i <= last; i++) if (radii[i]! > most) most = radii[i]!
  return most
}

/** How deep the edge stands in the stock as it was before any cut, at its worst node. */
export function depthInStock(grid: WorkGrid, edge: EdgeCurve, z: number, tip: number): number {
  const { step, offset, raw } = grid
  const first = Math.max(0, Math.ceil((z + edge.from - offset) / step))
  const last = Math.min(grid.count - 1, Math.floor((z + edge.to - offset) / step))
  let most = first > last ? 0 : Number.NEGATIVE_INFINITY
  for (let i = first; i <= last; i++) most = Math.max(most, raw[i]! - tip + edge.depth(offset + i * step - z))
  return most
}

/** How wide it is what was cut between two nodes: at the surface, or on a smaller diameter. */
export function widthBelow(grid: WorkGrid, first: number, last: number, diameter: number | null): number {
  if (last < first) return 0
  let nodes = 0
  for (let i = first; i <= last; i++) if (diameter === null || grid.now[i]! < diameter / 2) nodes++
  return nodes * grid.step
}

export function joinTouch(a: Touch, b: Touch): Touch {
  return {
    removed: Math.max(a.removed, b.removed),
    first: Math.min(a.first, b.first),
    last: Math.max(a.last, b.last),
    buried: Math.max(a.buried, b.buried),
  }
}
