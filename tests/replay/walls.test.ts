import { describe, expect, it } from 'vitest'
import type { Move, Operation } from '../../src/moves/operation.ts'
import type { FaultKind } from '../../src/moves/trace.ts'
import { replay } from '../../src/replay/replay.ts'
import { across, bar, begin, bench, feed, groove, inch, line, move, out, square, toInch } from './shop.ts'

/** A groove .100 wide and .060 deep by a tool of .050: at 0 it stands at the near wall, at 50 at the far one. Each is to have a plunge of its own. */
const setup = bar([1.5, 4])
const to = (place: number) => [move('go-past', 'compound', place - 20), move('return', 'compound', place)]
const plunge = (place: number, deep: number): readonly Move[] => [...to(place), feed(deep), out(-50)]
const sweep = (from: number, until: number, deep = 60): readonly Move[] => [
  ...to(from),
  feed(deep),
  across(until),
  out(-50),
]
const seen = (kind: FaultKind, moves: readonly Move[], more: Partial<Operation> = {}) => {
  const operation: Operation = {
    ...groove(1.125, 0.1, 0.06, [...begin, ...moves]),
    edge: square(0.05, 0.4),
    walls: 'plunged',
    ...more,
  }
  return replay(bench, setup, [operation])
    .faults.filter((fault) => fault.kind === kind)
    .map(({ by }) => (by === null ? null : Math.round(toInch(by) * 1e6) / 1e6))
}
const rough = [...plunge(10, 55), ...plunge(40, 55)]
const walls = [...plunge(0, 60), ...plunge(50, 60)]

describe('walls that have plunges of their own', () => {
  const whole = [...rough, ...sweep(10, 40), ...walls]
  it('have nothing against them where the floor between is swept and each is plunged', () => {
    for (const kind of ['into-wall', 'no-wall-plunge', 'ledge'] as const) expect(seen(kind, whole)).toEqual([])
  })
  it('are not swept into, from either side; a mark before them is short of them', () => {
    const into = (moves: readonly Move[]) =>
      seen('into-wall', [...rough, ...plunge(0, 31), ...plunge(50, 31), ...moves])
    expect(into(sweep(10, 50))).toEqual([null])
    expect(into(sweep(10, 49))).toEqual([])
    expect(into([...to(40), feed(60), across(0), out(-50)])).toEqual([null])
    expect(into([...to(40), feed(60), across(1), out(-50)])).toEqual([])
    // It may begin where the tool has just plunged.
    expect(into(sweep(0, 40))).toEqual([])
  })
  it('that stand between two marks are swept into where a plunge would finish them, half a mark short', () => {
    const into = (near: number, width: number, moves: readonly Move[]) => {
      const { wanted, region } = groove(near, width, 0.06, [])
      return seen('into-wall', [...rough, ...plunge(0, 31), ...plunge(50, 31), ...moves], { wanted, region })
    }
    expect(into(1.125, 0.1005, sweep(10, 50))).toEqual([null])
    expect(into(1.125, 0.1005, sweep(10, 49))).toEqual([])
    expect(into(1.1245, 0.1005, [...to(40), feed(60), across(0), out(-50)])).toEqual([null])
    expect(into(1.1245, 0.1005, [...to(40), feed(60), across(1), out(-50)])).toEqual([])
  })
  it('are not all that may stand so high: half of the depth is the most to sweep through', () => {
    const left = (deep: number) => seen('into-wall', [...plunge(10, 55), ...plunge(40, deep), ...sweep(10, 40)])
    expect(left(30)).toEqual([])
    expect(left(29)).toEqual([0.031])
  })
  it('have metal left for that: more than half of the depth', () => {
    const own = (place: number, deep: number) =>
      seen('no-wall-plunge', [...rough, ...plunge(place, deep), ...plunge(place, 60)])
    for (const place of [0, 50]) {
      expect(own(place, 29)).toEqual([])
      expect(own(place, 30)).toEqual([null])
    }
    // A mark of metal beside the wall is metal, however thin.
    expect(seen('no-wall-plunge', [...plunge(1, 55), ...plunge(49, 55), ...walls])).toEqual([])
    // An edge of two pieces ends where its last one does.
    const edge = { ...square(0.05, 0.4), pieces: [line(0, 0, inch(0.02), 0), line(inch(0.02), 0, inch(0.05), 0)] }
    expect(seen('no-wall-plunge', [...rough, ...plunge(50, 30), ...plunge(50, 60)], { edge })).toEqual([null])
    // Roughed too deep, but not plunged yet: a plunge in the middle finishes no wall.
    expect(seen('no-wall-plunge', [...plunge(0, 40), ...plunge(25, 60)])).toEqual([])
    // The wall is where that stands: a mark beside it is no wall.
    expect(own(1, 31)).toEqual([])
    expect(own(49, 31)).toEqual([])
  })
  it('are told of once, and are finished by a plunge to the floor, or a mark or two short of it', () => {
    const twice = [...rough, ...plunge(0, 31), ...plunge(0, 58), ...plunge(0, 60)]
    expect(seen('no-wall-plunge', twice)).toEqual([null])
    expect(seen('no-wall-plunge', [...rough, ...plunge(0, 57), ...plunge(0, 60)])).toEqual([null])
    expect(seen('no-wall-plunge', [...rough, ...plunge(0, 58), ...plunge(0, 60)])).toEqual([])
  })
  it('are not asked for where the job says nothing of them, or the tool has no room between', () => {
    const swept = [...rough, ...sweep(10, 25), ...sweep(25, 50, 58), ...plunge(0, 31), ...plunge(0, 60)]
    const narrow = (width: number) => {
      const { wanted, region } = groove(1.125, width, 0.06, [])
      return seen('into-wall', [...to(0), feed(60), across(Math.round(width * 1000 - 50))], { wanted, region })
    }
    expect(narrow(0.052)).toEqual([null])
    expect(narrow(0.0518)).toEqual([])
    // The same tool with its reference point in its middle, and a form of two pieces.
    const edge = { ...square(0.05, 0.4), pieces: [line(inch(-0.025), 0, inch(0.025), 0)] }
    const halves = (middle: number, width: number) => {
      const [a, b, c] = [1.125, middle, 1.125 + width].map(inch)
      const wanted = [line(a!, inch(-0.69), b!, inch(-0.69)), line(b!, inch(-0.69), c!, inch(-0.69))]
      return seen('into-wall', [...to(0), feed(60), across(Math.round(width * 1000 - 50))], { edge, wanted })
    }
    expect(halves(1.15, 0.0518)).toEqual([])
    expect(halves(1.15, 0.052)).toEqual([null])
    const { walls: asked, ...silent } = { ...groove(1.125, 0.1, 0.06, [...begin, ...swept]), walls: 'plunged' as const }
    expect(asked).toBe('plunged')
    const kinds = replay(bench, setup, [{ ...silent, edge: square(0.05, 0.4) }]).faults.map(({ kind }) => kind)
    for (const kind of ['into-wall', 'no-wall-plunge', 'ledge']) expect(kinds).not.toContain(kind)
  })
  it('have a floor between without a ledge that half a mark would not explain', () => {
    const two = (deep: number) => [
      ...rough,
      ...sweep(10, 25),
      ...sweep(25, 40, deep),
      ...plunge(0, 60),
      ...plunge(50, deep),
    ]
    expect(seen('ledge', two(60))).toEqual([])
    expect(seen('ledge', two(58))).toEqual([0.002])
    expect(seen('ledge', two(59))).toEqual([0.001])
  })
})
