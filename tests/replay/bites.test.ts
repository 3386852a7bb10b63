import { describe, expect, it } from 'vitest'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Piece } from '../../src/moves/form.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import type { FaultKind } from '../../src/moves/trace.ts'
import { replay } from '../../src/replay/replay.ts'
import {
  bar,
  begin,
  bench,
  corner,
  feed,
  groove,
  inch,
  line,
  move,
  out,
  round,
  shift,
  square,
  toInch,
  vee,
} from './shop.ts'

/** A tool .050 wide in a groove .100 wide: what one plunge may take, and how deep it may go in a slot of its own. Dials of .001. */
const setup = bar([1.5, 4])
const narrow = (moves: readonly Move[], more: Partial<Operation> = {}): Operation => ({
  ...groove(1.125, 0.1, 0.3, [...begin, ...moves]),
  edge: square(0.05, 0.4),
  ...more,
})
const seen = (kind: FaultKind, operation: Operation, lathe: Lathe = bench) =>
  replay(lathe, setup, [operation])
    .faults.filter((fault) => fault.kind === kind)
    .map(({ by }) => (by === null ? null : Math.round(toInch(by) * 1e6) / 1e6))
const pecks = (...counts: readonly number[]) => counts.flatMap((count) => [feed(count), out(-50)])

describe('one bite', () => {
  const bites = (moves: readonly Move[], more: Partial<Operation> = {}) => seen('no-peck', narrow(moves, more))
  it('is a quarter deeper than the tool is wide, and a mark', () => {
    expect(bites([feed(63), out(-50)])).toEqual([])
    expect(bites([feed(64), out(-50)])).toEqual([0.0005])
  })
  it('is a peck where one is given', () => {
    const peck = inch(0.02)
    expect(bites([feed(21), out(-50)], { peck })).toEqual([])
    expect(bites([feed(22), out(-50)], { peck })).toEqual([0.001])
  })
  it('is what was fed in since the tool was last clear', () => {
    expect(bites([feed(40), feed(63), out(-50)])).toEqual([])
    expect(bites([feed(40), feed(64), out(-50)])).toEqual([0.0005])
    expect(bites(pecks(40, 80, 120))).toEqual([])
    // Backed out by less than its slot is deep.
    expect(bites([feed(40), out(20), feed(80), out(-50)])).toEqual([0.0165])
    // With its lost motion of .008 it still touches the surface.
    expect(bites([feed(40), out(-8), feed(80), out(-50)])).toEqual([0.0165])
    expect(bites([feed(40), out(-9), feed(80), out(-50)])).toEqual([])
    // To the picometer: the second bite is as large as the first may be.
    expect(bites(pecks(21, 42), { peck: inch(0.02) })).toEqual([])
  })
  it('is asked of straight sides only, with or without round corners, and of the cross-feed', () => {
    expect(bites([feed(200)], { edge: vee(0.02, 38, 0.3) })).toEqual([])
    expect(bites([feed(100)], { edge: corner(0.05) })).toEqual([])
    expect(bites([feed(70)], { edge: round(0.025, 0.3) }).length).toBe(1)
    const sideways = [feed(60), move('feed-in', 'compound', 40), move('feed-in', 'compound', 45)]
    expect(bites(sideways)).toEqual([])
    // Not fed, but brought there: another rule's fault.
    expect(bites([move('return', 'cross-feed', 64), out(-50)])).toEqual([])
  })
})

describe('a tool in a slot of its own', () => {
  const binding = (moves: readonly Move[], width = 0.1) => {
    const wanted = [line(inch(1.125), inch(-0.45), inch(1.125 + width), inch(-0.45))]
    return seen('binding', narrow(moves, { wanted }))
  }
  const down = pecks(40, 80, 120, 160)
  it('binds at four times its width and two marks', () => {
    expect(binding([...down, ...pecks(202)])).toEqual([])
    expect(binding([...down, ...pecks(203)])).toEqual([0.003])
  })
  it('is one that is fed straight in, with straight sides, between the ends of all of its form', () => {
    expect(binding([...down, move('return', 'cross-feed', 203), out(-50)])).toEqual([])
    expect(seen('binding', narrow([...down, ...pecks(203)], { edge: vee(0.02, 2, 0.4) }))).toEqual([])
    const [a, b, c] = [1.125, 1.15, 1.225].map(inch)
    const wanted = [line(a!, inch(-0.45), b!, inch(-0.45)), line(b!, inch(-0.45), c!, inch(-0.44))]
    expect(seen('binding', narrow([...down, ...pecks(203)], { wanted }))).toEqual([0.003])
  })
  it('is as wide as all of its edge', () => {
    const pieces = [line(0, 0, inch(0.025), 0), line(inch(0.025), 0, inch(0.05), 0)]
    const edge = { ...square(0.05, 0.4), pieces }
    expect(seen('binding', narrow([...down, ...pecks(203)], { edge }))).toEqual([0.003])
    expect(seen('no-peck', narrow([feed(64), out(-50)], { edge }))).toEqual([0.0005])
    // At the free end there is no metal on one side.
    const free = {
      ...narrow([...down, ...pecks(203)]),
      placing: { point: 'tailstock-corner', against: { line: 0 } },
    } as const
    expect(seen('binding', free)).toEqual([])
  })
  it('does not where the metal beside it is lower, be it next to the tool only', () => {
    const beside = (...stock: readonly Piece[]) =>
      replay(bench, { ...setup, stock }, [narrow([...down, ...pecks(203)])]).faults.map(({ kind }) => kind)
    const level = (from: number, to: number) => line(inch(from), inch(-0.75), inch(to), inch(-0.75))
    expect(beside(level(0, 4))).toContain('binding')
    // Sloping down to the slot, to .050 under the surface.
    const near = beside(level(0, 1), line(inch(1), inch(-0.75), inch(1.125), inch(-0.7)), level(1.125, 4))
    expect(near).not.toContain('binding')
    const far = beside(level(0, 1.175), line(inch(1.175), inch(-0.7), inch(1.3), inch(-0.75)), level(1.3, 4))
    expect(far).not.toContain('binding')
  })
  it('does not where the slot is wider by a tenth of the tool, or an eighth of what there is to widen', () => {
    const beside = (place: number) => [
      shift(place),
      ...pecks(40, 80),
      move('go-past', 'compound', -20),
      move('return', 'compound', 0),
    ]
    const deep = [...down, ...pecks(203)]
    expect(binding([...beside(4), ...deep])).toEqual([0.003])
    expect(binding([...beside(5), ...deep])).toEqual([])
    expect(binding([...beside(1), ...deep], 0.066)).toEqual([0.003])
    expect(binding([...beside(2), ...deep], 0.066)).toEqual([])
  })
  it('has no tenth of its width beside it a mark before that', () => {
    const beside = (place: number) => [
      shift(place),
      ...pecks(40),
      move('go-past', 'compound', -20),
      move('return', 'compound', 0),
    ]
    const wide = (place: number) => {
      const moves = [...begin, ...beside(place), ...pecks(130, 260, 390, 443)]
      return seen('binding', { ...groove(1.125, 0.22, 0.5, moves), edge: square(0.11, 0.6) })
    }
    expect([wide(10), wide(11)]).toEqual([[0.003], []])
  })
  it('is not asked to be widened where there is no mark of room', () => {
    expect(binding([...down, ...pecks(203)], 0.0579)).toEqual([])
    expect(binding([...down, ...pecks(203)], 0.058)).toEqual([0.003])
  })
})

describe('what a cut takes', () => {
  it('is how deep it goes with a quarter of its edge at least', () => {
    const moves = [...begin, feed(20), out(-50), shift(10), feed(20), out(-50), shift(60), feed(30), out(-50)]
    const { taken } = replay(bench, setup, [groove(1.125, 0.3, 0.05, moves)]).operations[0]!
    const at = (index: number) => toInch(taken[index])
    expect([at(8), at(11), at(14)]).toEqual([
      expect.closeTo(0.02, 9),
      // .010 of .148.
      expect.closeTo(0, 9),
      // .050 of it is fresh, the rest .010 deeper.
      expect.closeTo(0.03, 9),
    ])
  })
})

describe('a cross-feed that comes in with the spindle running', () => {
  const counted = (moves: readonly Move[], lathe: Lathe = bench) => seen('counted-in', narrow(moves), lathe)
  const back = (count: number) => move('return', 'cross-feed', count)
  it('by more than one turn, .100, is counted in, but for a feed', () => {
    expect(counted([out(-100), back(0)])).toEqual([])
    expect(counted([out(-101), back(0)])).toEqual([null])
    expect(counted([out(-150), feed(10)])).toEqual([])
    expect(counted([move('stop'), out(-150), back(0)])).toEqual([])
  })
  it('comes to a stop that was set there standing, where the lathe has one', () => {
    const [halt, start] = [move('stop'), move('start')]
    const lathe = { ...bench, crossFeedStop: true as const }
    const moves = [halt, out(-150), back(-5), start, out(-150), back(-5)]
    expect(counted(moves, lathe)).toEqual([])
    expect(counted(moves)).toEqual([null])
    expect(counted([...moves.slice(0, -1), back(-4)], lathe)).toEqual([null])
  })
  it('on a readout is read and not counted', () => {
    const crossFeed = { kind: 'readout', units: 'inch', resolution: inch(0.001), reads: 'depth' } as const
    expect(counted([out(-150), back(0)], { ...bench, crossFeed })).toEqual([])
  })
})
