import type { Lathe, Scale } from '../../src/lathe/lathe.ts'
import type { Curve } from '../../src/moves/form.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import type { OperationTrace } from '../../src/moves/trace.ts'

/**
 * What one move of a feed meets: how wide the metal is that stands higher than `limit` above the edge as it passes, and the highest of all; and how
 * much deeper than before, than the surface, and than what is cut already the reference point comes. pm.
 */
export type Met = {
  readonly move: Move
  readonly at: number
  readonly highest: number
  readonly deeper: number
  readonly wider: (limit: number) => number
}

const POINTS = 4000

/**
 * The moves of one operation on work cut so far only by itself, on a grid along the work and without lost motion: every feed with what it meets.
 * Written for the tests; it knows nothing of the replay. `offset` of an edge with depth d: the edge's e(u).
 */
export function metalMet(operation: Operation, zero: OperationTrace['zero'], lathe: Lathe): Met[] {
  const { edge, angle, surface, region } = operation
  const [u0, u1] = [edge.pieces[0]!.from, edge.pieces.at(-1)!.to]
  const from = Math.min(region.from, region.from + u0) - (u1 - u0)
  const step = (region.to - region.from + 3 * (u1 - u0)) / POINTS
  const top = (zero.diameter - surface) / 2
  const deep = new Float64Array(POINTS).fill(top)
  if (operation.kind === 'corner radius') for (let i = 0; from + i * step < region.from; i++) deep[i] = Infinity
  const at = { cross: 0, compound: 0, carriage: 0, eye: null as number | null }
  const radians = (angle * Math.PI) / 180
  const place = () => (at.eye ?? zero.fromEnd + at.carriage) + at.compound * Math.cos(radians)
  const depth = () => at.cross + at.compound * Math.sin(radians)
  const found: Met[] = []
  operation.moves.forEach((move, index) => {
    const before = { z: place(), d: depth() }
    turn(at, move, lathe)
    if (move.action !== 'feed-in' && move.action !== 'feed-across') return
    const after = { z: place(), d: depth() }
    const swept = new Float64Array(POINTS).fill(Number.NEGATIVE_INFINITY)
    const parts = Math.max(1, Math.ceil(Math.abs(after.z - before.z) / step))
    for (let k = 0; k <= parts; k++) {
      const z = before.z + ((after.z - before.z) * k) / parts
      const d = before.d + ((after.d - before.d) * k) / parts
      const first = Math.max(0, Math.ceil((z + u0 - from) / step))
      for (let i = first; i < POINTS && from + i * step <= z + u1; i++)
        swept[i] = Math.max(swept[i]!, d + edgeAt(operation, from + i * step - z))
    }
    const heights = Array.from(swept, (one, i) => one - deep[i]!).filter((height) => height > 0)
    const highest = Math.max(0, ...heights)
    // Drawn out to clear the chip it comes back through the slot that it has cut.
    found.push({
      move,
      at: index,
      highest,
      deeper: Math.min(highest, after.d - Math.max(before.d, top)),
      wider: (limit) => heights.filter((height) => height > limit).length * step,
    })
    for (let i = 0; i < POINTS; i++) deep[i] = Math.max(deep[i]!, swept[i]!)
  })
  return found
}

function turn(
  at: { cross: number; compound: number; carriage: number; eye: number | null },
  move: Move,
  lathe: Lathe,
): void {
  if (move.place !== undefined) at.eye = move.place
  if (move.slide === undefined || typeof move.count !== 'number') return
  if (move.slide === 'cross-feed') at.cross = move.count * mark(lathe.crossFeed)
  else if (move.slide === 'compound') at.compound = move.count * mark(lathe.compound.scale)
  else at.carriage = move.count * mark(lathe.carriage!)
}

/** Travel of one readable step. pm. */
export const mark = (scale: Scale): number =>
  (scale.kind === 'readout' ? scale.resolution : scale.graduation * scale.readTo) / (scale.reads === 'diameter' ? 2 : 1)

function edgeAt({ edge }: Operation, u: number): number {
  const piece = edge.pieces.find(({ from, to }) => from <= u && u <= to)
  return piece === undefined ? Number.NEGATIVE_INFINITY : on(piece.curve, u)
}

const on = (curve: Curve, u: number): number =>
  curve.kind === 'line'
    ? curve.d0 + ((curve.d1 - curve.d0) * (u - curve.z0)) / (curve.z1 - curve.z0)
    : curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (u - curve.zc) ** 2))
