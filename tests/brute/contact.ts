import type { EdgeCurve } from './edges.ts'
import type { PartStep, Sheet } from './sheet-shape.ts'
import type { WorkGrid } from './work-grid.ts'

/** Radius of the reference point when the edge, fed straight in at `z`, first meets metal; and the diameter of that metal. */
export function crossContact(sheet: Sheet, grid: WorkGrid, edge: EdgeCurve, z: number): Contact | null {
  let best: Contact | null = null
  for (const { from, to, radius } of surfaces(sheet, grid, z + edge.from, z + edge.to)) {
    const tip = radius + edge.depth(nearestToPeak(edge, from - z, to - z))
    if (best === null || tip > best.tip) best = { tip, metal: 2 * radius }
  }
  return best
}

type Contact = { tip: number; metal: number }
type Surface = { from: number; to: number; radius: number }

/**
 * The cylinders of the part between two places, exact where nothing was cut yet; what was cut, node by node. An end that
 * only grazes the next step does not stand over it.
 */
function surfaces(sheet: Sheet, grid: WorkGrid, low: number, high: number): Surface[] {
  const graze = sheet.units === 'inch' ? 1e-7 : 2e-6
  return sheet.part.steps.flatMap((step) => {
    const [from, to] = [Math.max(low, step.from), Math.min(high, step.to)]
    return to - from > graze ? uncut(grid, from, to, radiusOf(step)) : []
  })
}

function uncut(grid: WorkGrid, from: number, to: number, radius: number): Surface[] {
  const { offset, step, now, raw, count } = grid
  const first = Math.max(0, Math.ceil((from - offset) / step))
  const last = Math.min(count - 1, Math.floor((to - offset) / step))
  const pieces: Surface[] = []
  let open = from
  for (let i = first; i <= last; i++) {
    if (raw[i]! - now[i]! <= 1e-9) continue
    const z = offset + i * step
    if (z - step > open) pieces.push({ from: open, to: z - step, radius })
    pieces.push({ from: z, to: z, radius: now[i]! })
    open = z + step
  }
  if (open <= to) pieces.push({ from: open, to, radius })
  return pieces
}

const radiusOf = (step: PartStep): number => (step.measured ?? step.measuredDiameter ?? step.diameter) / 2

function nearestToPeak(edge: EdgeCurve, low: number, high: number): number {
  const [from, to] = [Math.max(edge.from, low), Math.min(edge.to, high)]
  if (to < edge.peakFrom) return to
  return from > edge.peakTo ? from : Math.min(to, Math.max(from, edge.peakFrom))
}

/** Which way the face of the part at `z` looks; null = there is none. The chucked end is no face. */
export function faceAt(sheet: Sheet, z: number): 'tailstock' | 'headstock' | null {
  const near = (place: number): boolean => Math.abs(place - z) < (sheet.units === 'inch' ? 1e-7 : 2e-6)
  const next = sheet.part.steps.find(({ from }) => near(from))
  if (next === undefined) return null
  const before = sheet.part.steps.find(({ to }) => near(to))
  const [low, high] = [before === undefined ? 0 : radiusOf(before), radiusOf(next)]
  return high > low ? 'tailstock' : high < low ? 'headstock' : null
}

/**
 * Where the reference point stands when the edge, at one depth and moving toward the headstock from `start`, first meets
 * a face. What meets it is the foremost point of the edge that is below the rim of the face.
 */
export function faceContact(sheet: Sheet, grid: WorkGrid, edge: EdgeCurve, tip: number, start: number): number | null {
  const places = sheet.part.steps.flatMap((step) => {
    if (faceAt(sheet, step.from) !== 'tailstock') return []
    const ahead = foremostBelow(edge, tip, rimOf(grid, step))
    return ahead === null || step.from - ahead < start ? [] : [step.from - ahead]
  })
  return places.length === 0 ? null : Math.min(...places)
}

function rimOf({ offset, step, now, raw }: WorkGrid, part: PartStep): number {
  const node = Math.max(0, Math.ceil((part.from - offset) / step))
  return raw[node]! - now[node]! > 1e-9 ? now[node]! : radiusOf(part)
}

/** Beyond its peak an edge only falls: the place where it stands as high as the rim is found by halving. */
function foremostBelow(edge: EdgeCurve, tip: number, rim: number): number | null {
  const below = (u: number): boolean => tip - edge.depth(u) < rim
  if (below(edge.to)) return edge.to
  if (!below(edge.peakTo)) return null
  let [inside, outside] = [edge.peakTo, edge.to]
  for (let i = 0; i < 100; i++) {
    const middle = (inside + outside) / 2
    if (below(middle)) inside = middle
    else outside = middle
  }
  return inside
}
