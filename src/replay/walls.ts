import type { Form } from '../moves/form.ts'
import type { Move } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Bench, marksBox, see } from './bench.ts'
import { excess } from './form/compare.ts'
import { depthAt } from './form/curve.ts'
import { firstBeyond } from './form/insert.ts'
import { takenOf } from './measure.ts'

/** Where each wall is to have a plunge of its own: what may not be done to it, and what the sweeps between leave. */

/** Two plunges of which each leaves something on the other wall are two marks apart at least. */
const hasWallPlunges = (bench: Bench): boolean => {
  const { walls, wanted } = bench.operation
  const free = wanted.at(-1)!.to - wanted[0]!.from - (bench.ends[1] - bench.ends[0])
  return walls !== undefined && free >= 4 * marksBox(bench.lathe, bench.operation).along
}

/** A feed across ends short of both walls, and meets no metal that stands as high as one: at most half of the depth. */
export const checkSweep = (bench: Bench, move: Move, index: number, forward: boolean, cut: Form): void => {
  if (!hasWallPlunges(bench) || move.action !== 'feed-across') return
  const { near, far, depth } = wallsOf(bench)
  const { along } = marksBox(bench.lathe, bench.operation)
  // It may begin at a wall, where the tool has just plunged, but not end at one.
  const meets = forward ? cut.at(-1)!.to >= far - along : cut[0]!.from <= near + along
  const high = excess(cut, bench.possibly)?.by ?? 0
  if (meets) see(bench, 'into-wall', index, null, 'The tool is fed across into a wall that has a plunge of its own.')
  else if (high > depth / 2)
    see(bench, 'into-wall', index, high, 'The tool is fed across into metal as high as a wall.')
}

/** The plunge that finishes a wall must find metal on it: else roughing has been to the wall. */
export const checkWallPlunge = (bench: Bench, move: Move, index: number, cut: Form): void => {
  const { wallsDone } = bench
  if (!hasWallPlunges(bench) || move.action !== 'feed-in') return
  const { near, far, floor, depth } = wallsOf(bench)
  const { along, deep } = marksBox(bench.lathe, bench.operation)
  // To the depth, or a mark or two short of it: it may be finished a mark at a time.
  if (cut.every(({ curve, from }) => depthAt(curve, from) < floor - 4 * deep - 1)) return
  const sides = [
    ['near', Math.abs(cut[0]!.from - near), near + along / 2],
    ['far', Math.abs(cut.at(-1)!.to - far), far - along / 2],
  ] as const
  for (const [side, off, z] of sides) {
    if (off > along + 1 || wallsDone[side]) continue
    bench.wallsDone = { ...bench.wallsDone, [side]: true }
    const there = depthIn(bench.possibly, z)
    if (there !== null && floor - there <= depth / 2)
      see(bench, 'no-wall-plunge', index, null, 'Nothing was left on a wall for a plunge of its own.')
  }
}

/** Between two sweeps of one reading there is no ledge that half a mark would not explain. */
export const checkLedge = (bench: Bench): void => {
  const { operation, before, surely, lathe } = bench
  if (!hasWallPlunges(bench) || operation.angle !== 0) return
  const [ledge] = takenOf(surely, before.surely, operation, [{ id: 'flatness', aim: 0, limits: null }])
  if (ledge == null || ledge <= marksBox(lathe, operation).deep) return
  see(bench, 'ledge', -1, ledge, 'Where the sweeps of the floor meet they leave a ledge.')
}

const wallsOf = ({ operation: { wanted, surface } }: Bench) => {
  const floor = Math.max(...wanted.map(({ curve, from, to }) => depthAt(curve, (from + to) / 2)))
  return { near: wanted[0]!.from, far: wanted.at(-1)!.to, floor, depth: floor + surface / 2 }
}

const depthIn = (form: Form, z: Length): Length | null => {
  const piece = form[firstBeyond(form, z)]
  return piece === undefined || piece.from > z ? null : depthAt(piece.curve, z)
}
