import { describe, expect, it } from 'vitest'
import { budgetOf } from '../../src/budget/budget.ts'
import type { Budgeted } from '../../src/budget/budgeted.ts'
import { worn } from '../../src/budget/worn.ts'
import type { Accuracy, Lathe } from '../../src/lathe/lathe.ts'
import type { Instrument, Operation } from '../../src/moves/operation.ts'
import { excess } from '../../src/replay/form/compare.ts'
import { replay, replayNext, startOf } from '../../src/replay/replay.ts'
import { formed, pulley, rounded, stepped } from '../replay/operations.ts'
import { bar, bench, corner, inch, neck, round, square, toInch, vee } from '../replay/shop.ts'

const setup = bar([1.5, 4])
const budget = (lathe: Lathe, where: typeof setup, operations: readonly Operation[]) => {
  let before = startOf(where)
  return operations.map((operation) => {
    const all = budgetOf(lathe, where, operation, before)
    before = replayNext(lathe, where, before, operation, 0).after
    return all
  })
}
const NONE: Accuracy = {
  reading: 0,
  touchOff: 0,
  layout: 0,
  tool: 0,
  stock: 0,
  runout: 0,
  swivel: 0,
  trued: 0,
  toolAngle: 0,
}
const only = (accuracy: Partial<Accuracy>) => ({ ...bench, accuracy: { ...NONE, ...accuracy } })
const ids: readonly Instrument[] = ['width', 'depth', 'bottomDiameter', 'near', 'far', 'center', 'root', 'flatness']
const all = (operation: Operation): Operation => ({
  ...operation,
  dimensions: ids.map((id) => ({ id, aim: 0, limits: null })),
})
const of = (accuracy: Partial<Accuracy>, operation: Operation = all(neck)): Readonly<Record<string, Budgeted>> =>
  Object.fromEntries(budget(only(accuracy), setup, [operation])[0]!.map((one) => [one.id, one]))
const off = (one: Budgeted | undefined): readonly number[] =>
  [one!.low - one!.planned, one!.high - one!.planned].map(toInch)
const near = (actual: readonly number[], wanted: readonly number[]): void => {
  for (const [index, value] of wanted.entries()) expect(actual[index]).toBeCloseTo(value, 9)
}

describe('one error at a time on a square groove', () => {
  it('none: everything comes out as planned', () => {
    for (const one of Object.values(of({}))) near(off(one), [0, 0])
  })
  it('layout moves the place only', () => {
    const sizes = of({ layout: inch(0.005) })
    near(off(sizes.near), [-0.005, 0.005])
    near(off(sizes.center), [-0.005, 0.005])
    near(off(sizes.width), [0, 0])
    near(off(sizes.depth), [0, 0])
    expect(sizes.near!.worstCause).toBe('layout')
    expect(sizes.width!.worstCause).toBe('none')
  })
  it('touching off moves the depth only, the bottom twice as much', () => {
    const sizes = of({ touchOff: inch(0.001) })
    near(off(sizes.depth), [-0.001, 0.001])
    near(off(sizes.bottomDiameter), [-0.002, 0.002])
    near(off(sizes.near), [0, 0])
    expect(sizes.depth!.worstCause).toBe('touch-off')
  })
  it('touching off moves the place too where a face is touched', () => {
    near(
      off(
        of(
          { touchOff: inch(0.001), layout: inch(0.005) },
          { ...all(neck), placing: { point: 'tailstock-corner', against: { face: inch(1.125) } } },
        ).near,
      ),
      [-0.001, 0.001],
    )
  })
  it('the tool moves the wall that its reference corner does not cut', () => {
    const sizes = of({ tool: inch(0.0005) })
    near(off(sizes.width), [-0.0005, 0.0005])
    near(off(sizes.far), [-0.0005, 0.0005])
    near(off(sizes.near), [0, 0])
  })
  it('the stock moves the bottom, not the depth, since the real surface is touched', () => {
    const sizes = of({ stock: inch(0.0005) })
    near(off(sizes.bottomDiameter), [-0.0005, 0.0005])
    near(off(sizes.depth), [0, 0])
    near(off(sizes.width), [0, 0])
  })
  it('a reading counts once for each dial place the form still shows', () => {
    const sizes = of({ reading: inch(0.0005) })
    near(off(sizes.depth), [-0.0005, 0.0005])
    // 8 is a reading either way; 0 read short moves the near wall out, read long it finds the wall cut at the zero itself.
    near(off(sizes.width), [-0.0005, 0.001])
    expect(sizes.width!.worstCause).toBe('reading-compound')
  })
  it('half of what can be read where nothing is stated', () => {
    near(off(budget({ ...bench, accuracy: { ...NONE, reading: null } }, setup, [all(neck)])[0]![1]), [-0.0005, 0.0005])
  })
  it('on a diameter dial a reading error is half in travel', () => {
    const lathe = { ...only({ reading: inch(0.0005) }), crossFeed: { ...bench.crossFeed, reads: 'diameter' as const } }
    const doubled = all({
      ...neck,
      moves: neck.moves.map((one) =>
        one.slide === 'cross-feed' && one.count ? { ...one, count: one.count * 2 } : one,
      ),
    })
    const [, depth] = budget(lathe, setup, [doubled])[0]!
    expect(toInch(depth!.planned)).toBeCloseTo(0.072, 9)
    near(off(depth), [-0.00025, 0.00025])
  })
})

describe('sums and verdicts', () => {
  it('worst case is the sum, root sum square is less', () => {
    const sizes = of({ touchOff: inch(0.003), runout: inch(0.004) })
    near(off(sizes.depth), [-0.007, 0.007])
    expect(toInch(sizes.depth!.rss)).toBeCloseTo(0.005, 9)
    expect(sizes.depth!.worstCause).toBe('runout')
  })
  it('holds, may not hold, no limits', () => {
    const trued = { ...bench, accuracy: { ...bench.accuracy, trued: 0 } }
    const [width, depth] = budget(trued, setup, [neck])[0]!
    expect(width).toMatchObject({ verdict: 'holds' })
    expect(toInch(width!.spare)).toBeCloseTo(0.0035, 9)
    expect(depth).toMatchObject({ verdict: 'may not hold' })
    expect(toInch(depth!.spare)).toBeCloseTo(-0.0005, 9)
    expect(of({}).width).toMatchObject({ verdict: 'no limits given', spare: null })
  })
  it('a limit met exactly is met', () => {
    const [, depth] = budget(only({ touchOff: inch(0.002) }), setup, [neck])[0]!
    expect(depth!.verdict).toBe('holds')
  })
  it('a size that is not there is said, not made up', () => {
    const nothing = { ...neck, moves: [] }
    const [width] = budget(bench, setup, [nothing])[0]!
    expect(width).toMatchObject({ planned: Number.NaN, verdict: 'may not hold', spare: null })
  })
})

describe('other forms', () => {
  it('a form tool ground off size shows in the radius', () => {
    const radius = of({ tool: inch(0.0005) }, formed).radius!
    near(off(radius), [-0.0005, 0.0005])
  })
  it('a deeper V is wider at the surface by twice the tangent', () => {
    const width = of({ touchOff: inch(0.001) }, pulley).width!
    const more = 2 * 0.001 * Math.tan((19 * Math.PI) / 180)
    near(off(width), [-more, more])
  })
  it('a corner tool of another radius keeps its corner', () => {
    // What of it touches the face .115 back comes to be .115 deep whatever the radius is; the radius is off by what it was measured wrong.
    const sizes = of({ tool: inch(0.0005) }, rounded)
    near(off(sizes.legDown), [0, 0])
    near(off(sizes.radius), [-0.0005, 0.0005])
  })
  it('a stepped form takes every error too', { timeout: 60_000 }, () => {
    const sizes = of({ ...bench.accuracy }, stepped)
    expect(sizes.depth!.high).toBeGreaterThan(sizes.depth!.planned)
  })
  it('the planned size is the replay’s', () => {
    const trace = replay(bench, setup, [pulley])
    budget(bench, setup, [pulley])[0]!.forEach((one, index) => {
      expect(one.planned).toBeCloseTo(trace.operations[0]!.sizes[index]!.surely!, -2)
    })
  })
  it('budgets every operation on the part the earlier ones leave', () => {
    const rows = budget(bench, setup, [rounded, neck])
    expect(rows).toHaveLength(2)
    expect(toInch(rows[1]![1]!.planned)).toBeCloseTo(0.072, 9)
  })
})

describe('a tool measured wrong', () => {
  it('stays where its reference point is', () => {
    expect(worn(square(0.1), inch(0.001)).pieces[0]).toMatchObject({ from: 0, to: inch(0.101) })
    const v = worn(vee(0.1, 38, 0.2), inch(0.001)).pieces
    expect(v[0]).toEqual(vee(0.1, 38, 0.2).pieces[0])
    expect(v[2]!.from).toBe(inch(0.101))
    expect(excess(worn(round(0.1), inch(0.001)).pieces, round(0.101).pieces)?.by).toBeLessThan(1)
    expect(excess(corner(0.101).pieces, worn(corner(0.1), inch(0.001)).pieces)?.by).toBeLessThan(1000)
  })
})
