import { describe, expect, it } from 'vitest'
import type { Shop } from '../../src/finish/measured.ts'
import { stretches, whyNot } from '../../src/finish/no-row.ts'
import { hangsOnOutside, onOutside } from '../../src/finish/outside.ts'
import { offPaper, readOff } from '../../src/finish/paper.ts'
import { bottomWanted, stopOf } from '../../src/finish/stop.ts'
import type { Trouble } from '../../src/finish/trouble.ts'
import type { Operation, WantedDimension } from '../../src/moves/operation.ts'
import { replay, startOf } from '../../src/replay/replay.ts'
import { bar, bench, feed, groove, inch, move, neck, neckMoves, toInch } from '../replay/shop.ts'

/** Rows at 30, 20, 10 and 0 (times 1 000 000), and what each tells. */
const M = 1_000_000
const table = (between: 'nearer' | 'in proportion' | 'none', without: readonly number[] = []) => ({
  expected: 20 * M,
  most: 25 * M,
  rows: [30, 20, 10, 0].map((at) => ({ measured: at * M })),
  without: without.map((at) => [at * M]),
  between,
})

describe('a reading looked up in a table', () => {
  const VALUES = [-2, 0, 1, 4]
  const read = (at: number, up = false, between: 'nearer' | 'in proportion' | 'none' = 'nearer') =>
    readOff(table(between), at * M, (row) => VALUES[row]!, up)
  it('is the value of its row', () => {
    expect([30, 20, 10, 0].map((at) => read(at))).toEqual(VALUES)
    expect(read(10.0009)).toBe(1)
    // So also where nobody may go between two rows.
    expect(read(10, false, 'none')).toBe(1)
    expect(read(14, false, 'none')).toBe(null)
  })
  it('is in between by its share, and half of a step is the lower one or the higher one', () => {
    expect([14, 15, 16].map((at) => read(at))).toEqual([1, 0, 0])
    expect([14, 15, 16].map((at) => read(at, true))).toEqual([1, 1, 0])
    // Three steps from 10 to 0: a third of the way is one step on.
    expect([6.7, 5, 3.3].map((at) => read(at))).toEqual([2, 2, 3])
    expect(read(5, true)).toBe(3)
    expect(Object.is(read(21), 0)).toBe(true)
  })
  it('is that of the last row past the last, as far as the errors go', () => {
    expect([33, -3].map((at) => read(at))).toEqual([-2, 4])
    expect(read(45.0009)).toBe(-2)
    expect(read(45.002)).toBe(null)
    expect(read(-5.002)).toBe(null)
    expect([offPaper(table('nearer'), 45 * M + 1000), offPaper(table('nearer'), 45 * M + 1001)]).toEqual([false, true])
  })
  it('is none beside a reading that has no row', () => {
    const beside = table('nearer', [15])
    const value = (row: number) => VALUES[row]!
    expect(readOff(beside, 14 * M, value, false)).toBe(null)
    expect(readOff(beside, 16 * M, value, false)).toBe(null)
    expect(readOff(beside, 15 * M, value, false)).toBe(null)
    expect(readOff(beside, 9 * M, value, false)).toBe(1)
    expect(readOff({ ...beside, rows: [] }, 15 * M, value, false)).toBe(null)
  })
})

describe('readings without a row', () => {
  const rows = (...at: readonly number[]) => at.map((measured) => ({ measured }))
  it('stand together where they follow one another', () => {
    expect(stretches([6, 5, 4, 3, 2, 1], rows(4, 1))).toEqual([
      [6, 5],
      [3, 2],
    ])
    expect(stretches([3, 2, 1], rows(3, 2, 1))).toEqual([])
    expect(stretches([3, 2, 1], [])).toEqual([[3, 2, 1]])
  })
  it('have a reason that tells of what happened', () => {
    const fault = (kind: string): Trouble => ({ why: 'fault', fault: { kind } }) as unknown as Trouble
    expect(whyNot(fault('not-clear'))).toBe('the tool would not come clear')
    expect(whyNot(fault('shank-or-obstacle'))).toBe('the bit or its blank would hit the work')
    expect(whyNot(fault('beyond-travel'))).toBe('a slide has not the travel for it')
    expect(whyNot({ why: 'form' } as Trouble)).toBe('the form would be off')
    expect(whyNot({ why: 'outside' } as Trouble)).toBe('no reading comes within the limits')
  })
})

const sized = (...dimensions: readonly WantedDimension[]): Operation => ({ ...neck, dimensions })
const of = (
  id: WantedDimension['id'],
  aim: number,
  limits?: readonly [number, number],
  fixed = false,
): WantedDimension => ({
  id,
  aim: inch(aim),
  limits: limits === undefined ? null : [inch(limits[0]), inch(limits[1])],
  ...(fixed ? { fixed } : {}),
})

describe('the bottom that is wanted', () => {
  it('has its own limits, or those of the depth, turned round and twice', () => {
    const own = bottomWanted(sized(of('bottomDiameter', 1.356, [1.35, 1.36]), of('depth', 0.072, [0.07, 0.075])))
    expect(own.limits!.map(toInch)).toEqual([1.35, 1.36])
    const hung = bottomWanted(sized(of('bottomDiameter', 1.356), of('depth', 0.072, [0.07, 0.075])))
    expect(hung.limits!.map(toInch)).toEqual([expect.closeTo(1.35, 9), expect.closeTo(1.36, 9)])
    expect(bottomWanted(sized(of('bottomDiameter', 1.356), of('depth', 0.072))).limits).toBe(null)
  })
  it('hangs on the outside where the drawing gives a depth', () => {
    expect(hangsOnOutside({ operation: sized(of('bottomDiameter', 1.356), of('depth', 0.072)) })).toBe(true)
    expect(hangsOnOutside({ operation: sized(of('bottomDiameter', 1.356, undefined, true)) })).toBe(false)
  })
})

describe('the stop before the finish', () => {
  const setup = bar([1.5, 4])
  const rough = { ...move('measure'), purpose: 'expect-rough' } as const
  const finish = { ...feed(72), purpose: 'finish' } as const
  const at = neckMoves.findIndex(({ action }) => action === 'measure')
  const moves = neckMoves.map((one, i) => (i === at ? rough : one.count === 72 ? finish : one))
  const operation = {
    ...groove(1.125, 0.156, 0.072, moves),
    dimensions: [of('width', 0.156), of('depth', 0.072), of('bottomDiameter', 1.356)],
  }
  const traceOf = (one: Operation) => replay(bench, setup, [one]).operations[0]!
  it('is the last measuring before a feed that finishes, with what the bottom measures then', () => {
    const stop = stopOf(operation, traceOf(operation))!
    expect(stop).toMatchObject({ at, by: 'cross-feed', finishes: [moves.indexOf(finish)] })
    // Roughed to .052: 1.5 less .104.
    expect(toInch(stop.expected)).toBeCloseTo(1.396, 9)
  })
  it('is none where nothing is finished after it, or no bottom is measured', () => {
    const plain = { ...operation, moves: moves.map((one) => (one === finish ? feed(72) : one)) }
    expect(stopOf(plain, traceOf(plain))).toBe(null)
    const early = { ...operation, moves: [...moves.slice(0, at), finish, ...moves.slice(at)] }
    expect(stopOf(early, traceOf(early))!.finishes).toEqual([moves.indexOf(finish) + 1])
    const narrow = { ...operation, dimensions: [of('width', 0.156)] }
    expect(stopOf(narrow, traceOf(narrow))).toBe(null)
    const never = { ...operation, moves: [...moves.slice(0, at), ...moves.slice(at + 1)] }
    expect(stopOf(never, traceOf(never))).toBe(null)
  })
  it('expects as much more as the outside measures more, where the depth counts from there', () => {
    const stop = stopOf(operation, traceOf(operation))!
    const shop: Shop = { lathe: bench, setup, progress: startOf(setup), operation, stop }
    const real = onOutside(shop, inch(1.51))
    expect(toInch(real.stop.expected)).toBeCloseTo(1.406, 9)
    expect(toInch(real.operation.surface)).toBeCloseTo(1.51, 9)
    expect(toInch(real.operation.touch.diameter)).toBeCloseTo(1.51, 9)
    expect(real.operation.dimensions.map(({ aim }) => toInch(aim))).toEqual([
      expect.closeTo(0.156, 9),
      expect.closeTo(0.072, 9),
      expect.closeTo(1.366, 9),
    ])
    const depth = ({ curve }: (typeof real.operation.wanted)[number]) => (curve.kind === 'line' ? toInch(curve.d0) : 0)
    expect(depth(real.operation.wanted[0]!)).toBeCloseTo(0.072 - 0.755, 9)
    expect(depth(real.progress.surely[0]!)).toBeCloseTo(-0.755, 9)
    expect(onOutside(shop, null)).toBe(shop)
    expect(onOutside(shop, inch(1.5))).toBe(shop)
    const fixed = { ...shop, operation: { ...operation, dimensions: [of('bottomDiameter', 1.356, undefined, true)] } }
    expect(onOutside(fixed, inch(1.51))).toBe(fixed)
    // A lower step beside it is not the surface that was measured.
    const steps = bar([1, 1], [1.5, 3])
    const beside = onOutside({ ...shop, setup: steps, progress: startOf(steps) }, inch(1.51))
    expect(beside.progress.surely.map(depth)).toEqual([expect.closeTo(-0.5, 9), expect.closeTo(-0.755, 9)])
  })
})
