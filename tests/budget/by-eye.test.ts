import { describe, expect, it } from 'vitest'
import { broughtToLines } from '../../src/budget/at-lines.ts'
import { budgetOf } from '../../src/budget/budget.ts'
import { causesOf, type Way } from '../../src/budget/causes.ts'
import type { Accuracy, Lathe } from '../../src/lathe/lathe.ts'
import type { Move, Operation, Purpose } from '../../src/moves/operation.ts'
import { startOf } from '../../src/replay/replay.ts'
import { runOperation } from '../../src/replay/run.ts'
import { bar, begin, bench, feed, groove, inch, line, move, out, toInch, vee } from '../replay/shop.ts'

/** Grooves whose walls are brought to two scribed lines by eye, the carriage moved by hand. */
const setup = bar([1.5, 4])
const before = startOf(setup)
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
const only = (accuracy: Partial<Accuracy>): Lathe => ({ ...bench, accuracy: { ...NONE, ...accuracy } })
const to = (action: Move['action'], place: number, purpose?: Purpose): Move => ({
  ...move(action, 'carriage'),
  place: inch(place),
  ...(purpose === undefined ? {} : { purpose }),
})
const [free, held] = [move('unlock', 'carriage'), move('lock', 'carriage')]
const between = (place: number, deep: number): readonly Move[] => [
  free,
  to('move-carriage', place, 'between-lines'),
  held,
  feed(deep),
  free,
]

/** From 1.125 to 1.325 by a tool of .148. */
const square = groove(1.125, 0.2, 0.072, [
  ...begin,
  ...between(1.15, 72),
  to('feed-across', 1.125, 'tailstock-line'),
  to('feed-across', 1.177, 'headstock-line'),
  held,
  out(-50),
])
/** 38 degrees, .100 deep, the nose .140: the flanks meet the surface .1 tan 19 beside the flat bottom, which is .200 wide. */
const tan = Math.tan((19 * Math.PI) / 180)
const slanting: Operation = {
  ...groove(1.5, 0.2, 0.1, [
    ...begin,
    ...between(1.52, 100),
    to('feed-across', 1.5, 'tailstock-line'),
    to('feed-across', 1.56, 'headstock-line'),
    held,
    out(-50),
  ]),
  edge: vee(0.14, 38, 0.2),
  placing: { point: 'nose-tailstock-corner', against: { line: inch(1.5) } },
  wanted: [
    line(inch(1.5 - 0.1 * tan), inch(-0.75), inch(1.5), inch(-0.65)),
    line(inch(1.5), inch(-0.65), inch(1.7), inch(-0.65)),
    line(inch(1.7), inch(-0.65), inch(1.7 + 0.1 * tan), inch(-0.75)),
  ],
  region: { from: inch(1.5 - 0.1 * tan), to: inch(1.7 + 0.1 * tan) },
}

const ranges = (operation: Operation, accuracy: Partial<Accuracy>) => {
  const dimensions = (['near', 'far', 'width', 'root'] as const).map((id) => ({ id, aim: 0, limits: null }))
  const rows = budgetOf(only(accuracy), setup, { ...operation, dimensions }, before)
  return Object.fromEntries(
    rows.map(({ id, planned, low, high, worstCause }) => [
      id,
      { by: [toInch(planned - low), toInch(high - planned)], worstCause },
    ]),
  )
}
const within = (by: number) => [expect.closeTo(by, 8), expect.closeTo(by, 8)]

describe('a wall that is brought to a line by eye', () => {
  it('is off by the error of the eye, and the width by that of both', () => {
    const { near, far, width } = ranges(square, { layout: inch(0.005) })
    expect(near).toEqual({ by: within(0.005), worstCause: 'tailstock-line' })
    expect(far).toEqual({ by: within(0.005), worstCause: 'headstock-line' })
    expect(width!.by).toEqual(within(0.01))
  })
  it('is where the line is, however wide the tool is', () => {
    const { near, far, width } = ranges(square, { tool: inch(0.0005) })
    for (const one of [near, far, width]) expect(one!.by).toEqual(within(0))
  })
  it.each([
    ['touched', { touchOff: inch(0.001) }],
    ['read', { reading: inch(0.001) }],
  ])('as a flank: the edge is at its line however deep is %s, and the bottom gives way', (_, accuracy) => {
    const { near, far, width, root } = ranges(slanting, accuracy)
    for (const one of [near, far, width]) expect(one!.by).toEqual(within(0))
    expect(root!.by).toEqual(within(2 * 0.001 * tan))
  })
})

describe('bringing a cut to its lines', () => {
  const brought = (operation: Operation, way: Partial<Way>) =>
    broughtToLines(only({}), setup, operation, before)({ operation, before, shift: null, ...way }).operation
  const deeper = { ...slanting, off: { along: 0, deep: inch(0.001) } }
  const places = ({ moves }: Operation) => moves.map(({ place }) => (place === undefined ? null : toInch(place)))
  it('takes back what the error has moved the edge by, and leaves the other moves alone', () => {
    const wanted = slanting.moves.map(({ place, purpose }) => {
      const by = purpose === 'tailstock-line' ? 0.001 * tan : purpose === 'headstock-line' ? -0.001 * tan : 0
      return place === undefined ? null : expect.closeTo(toInch(place) + by, 8)
    })
    expect(places(brought(slanting, { operation: deeper }))).toEqual(wanted)
  })
  it('is a feed across to a place: another move keeps its place whatever it is called, and one to a reading has none', () => {
    const named = (moves: readonly Move[]) =>
      moves.map((one) => (one.purpose === 'between-lines' ? { ...one, purpose: 'tailstock-line' as const } : one))
    const moves = [
      ...named(slanting.moves),
      { ...move('feed-across', 'compound', 8), purpose: 'headstock-line' as const },
    ]
    const way = brought({ ...slanting, moves }, { operation: { ...deeper, moves } })
    const first = moves.findIndex(({ action }) => action === 'move-carriage')
    expect(way.moves[first]!.place).toBe(inch(1.52))
    expect(way.moves.at(-1)).toEqual(moves.at(-1))
  })
  it('cannot be done where the tool misses the work, or is not meant to cut', () => {
    const clear = { ...slanting, off: { along: 0, deep: inch(-0.2) } }
    expect(places(brought(slanting, { operation: clear }))).toEqual(places(slanting))
    expect(places(brought(clear, { operation: slanting }))).toEqual(places(slanting))
  })
  it('does not take back the error of the eye', () => {
    const shift = { slide: 'carriage', place: inch(1.5), by: inch(0.005) } as const
    expect(brought(slanting, { shift })).toBe(slanting)
  })
})

describe('the places by eye that the finished form shows', () => {
  const met = (moves: readonly Move[]) => {
    const operation = { ...square, moves }
    const lathe = only({ layout: inch(0.005) })
    const { trace } = runOperation(lathe, setup, operation, before, { rules: false, shift: null })
    return causesOf(lathe, operation, before, trace)
      .flatMap(({ name, ways: [{ shift }] }) =>
        shift !== null && 'place' in shift ? [[name, toInch(shift.place)] as const] : [],
      )
      .sort((a, b) => a[1] - b[1])
  }
  const lines = [
    ['tailstock-line', 1.125],
    ['place-by-eye', 1.15],
    ['headstock-line', 1.177],
  ]
  it('are those that it was cut at, and that a feed across began at', () => {
    expect(met(square.moves)).toEqual(lines)
  })
  it('are not those where it was roughed, or was brought to afterwards', () => {
    const roughed = [...between(1.14, 52), out(-50)]
    const after = square.moves.toSpliced(-2, 0, to('feed-across', 1.16))
    expect(met([...begin, ...roughed, ...after.slice(begin.length)])).toEqual(lines)
  })
  it('are also those where a feed across began that followed one over what is cut already', () => {
    const [there, on, back] = [to('move-carriage', 1.125), to('feed-across', 1.13), to('feed-across', 1.126)]
    const moves = [...begin, free, there, held, feed(72), free, on, back, to('feed-across', 1.177), held, out(-50)]
    expect(met(moves).map(([, place]) => place)).toEqual([1.125, 1.126, 1.13, 1.177])
  })
  it('are also those that the very first move brings it to', () => {
    const touch = [move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
    const moves = [to('move-carriage', 1.15), ...touch, out(-50), move('start'), held, feed(72)]
    expect(met([...moves, out(-50)])).toEqual([['place-by-eye', 1.15]])
    const on = [free, to('feed-across', 1.177), held, out(-50)]
    expect(met([...moves, ...on]).map(([, place]) => place)).toEqual([1.15, 1.177])
    // The plunge at the first place is cut away: only the feed across from there still shows.
    const deeper = [1.149, 1.151].flatMap((place) => [...between(place, 90).slice(0, -1), out(-50)])
    expect(met([...moves, ...on, ...deeper]).map(([, place]) => place)).toEqual([1.149, 1.15, 1.151, 1.177])
  })
})
