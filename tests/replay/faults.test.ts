import { describe, expect, it } from 'vitest'
import type { Move, Operation } from '../../src/moves/operation.ts'
import type { FaultKind } from '../../src/moves/trace.ts'
import { replay } from '../../src/replay/replay.ts'
import { rounded } from './operations.ts'
import {
  across,
  back,
  bar,
  begin,
  bench,
  feed,
  groove,
  inch,
  move,
  neck,
  neckMoves,
  out,
  past,
  shift,
  square,
  toInch,
} from './shop.ts'

const setup = bar([1.5, 4])
const faultsOf = (operation: Operation, where = setup, lathe = bench): readonly FaultKind[] => [
  ...new Set(replay(lathe, where, [operation]).faults.map(({ kind }) => kind)),
]
const with_ = (moves: readonly Move[]): Operation => ({ ...neck, moves })
const swapped = (from: Move, to: readonly Move[], nth = 0): Operation => {
  const places = neckMoves.flatMap((one, index) =>
    one.action === from.action && one.slide === from.slide && one.count === from.count ? [index] : [],
  )
  const at = places[nth]
  if (at === undefined) throw new Error(`no such move: ${from.action} ${from.count}`)
  return with_([...neckMoves.slice(0, at), ...to, ...neckMoves.slice(at + 1)])
}

describe('a sound sheet', () => {
  const trace = replay(bench, setup, [neck])
  it('shows no fault', () => expect(trace.faults).toEqual([]))
  it('cuts the wanted sizes whatever the backlash', () => {
    const [width, depth] = trace.operations[0]!.sizes
    expect(toInch(width?.surely)).toBeCloseTo(0.156, 9)
    expect(toInch(width?.possibly)).toBeCloseTo(0.156, 9)
    expect(toInch(depth?.surely)).toBeCloseTo(0.072, 9)
  })
  it('measures the rough groove at the stop', () => {
    const stops = Object.values(trace.operations[0]!.at)
    expect(toInch(stops[0]?.[1]?.surely)).toBeCloseTo(0.052, 9)
    expect(toInch(stops[1]?.[1]?.surely)).toBeCloseTo(0.072, 9)
  })
  it('states the clearance with the whole backlash against it, of every move from a back-out to the next feed', () => {
    const { clearance } = trace.operations[0]!
    const outs = neck.moves.flatMap(({ action }, index) => (action === 'back-out' ? [index] : []))
    expect(outs).toHaveLength(4)
    expect(Object.keys(clearance)).toEqual(expect.arrayContaining(outs.map(String)))
    for (const by of Object.values(clearance)) expect(toInch(by)).toBeCloseTo(0.042, 9)
  })
  it('keeps the slides as intervals', () => {
    const after = trace.operations[0]!.slides[6]!['cross-feed']
    expect(after.map(toInch)).toEqual([-0.05, -0.042])
  })
})

describe('outside-form', () => {
  it('a mark too deep', () => expect(faultsOf(swapped(feed(72), [feed(73)]))).toContain('outside-form'))
  it('a mark too far', () => expect(faultsOf(swapped(across(8), [across(9)]))).toContain('outside-form'))
  it('half a mark is allowed', () => {
    const shallow = { ...neck, wanted: groove(1.125, 0.156, 0.0715, []).wanted }
    expect(faultsOf(shallow)).toEqual([])
  })
  it('a way back without going past', () => {
    const without = with_(neckMoves.filter((one) => one.action !== 'go-past'))
    const faults = faultsOf(without)
    expect(faults).toContain('open-form')
  })
})

describe('moved-in-contact', () => {
  it('a shift on the floor', () => {
    expect(faultsOf(swapped(across(8), [shift(8)]))).toContain('moved-in-contact')
  })
  it('a shift along the touched surface', () => {
    const moves = begin.map((one) => (one.action === 'back-out' ? shift(4) : one))
    expect(faultsOf(with_(moves))).toContain('moved-in-contact')
  })
  it('a shift inside a groove, off its floor, up to its wall is none', () => {
    const moves = [...begin, feed(60), out(-50), shift(100), feed(60), out(-50), past(-20), back(0)]
    expect(faultsOf({ ...with_(moves), wanted: groove(1.125, 0.25, 0.06, []).wanted })).not.toContain(
      'moved-in-contact',
    )
  })
})

describe('carriage-lock', () => {
  const seen = (place: number): Move => ({ ...move('move-carriage', 'carriage'), place: inch(place) })
  const eye: readonly Move[] = [
    ...begin,
    move('unlock'),
    seen(1.129),
    move('lock'),
    feed(72),
    move('unlock'),
    { ...seen(1.125), action: 'feed-across' },
    { ...seen(1.133), action: 'feed-across' },
    move('lock'),
    out(-50),
  ]
  it('none where it is let go to be moved, by eye too, and held to cut', () => {
    expect(faultsOf(with_(eye))).toEqual([])
    expect(toInch(replay(bench, setup, [with_(eye)]).operations[0]!.sizes[0]!.surely)).toBeCloseTo(0.156, 9)
  })
  it('a carriage moved while it is held', () => {
    const held = eye.filter((one, index) => one.action !== 'unlock' || index > 8)
    expect(faultsOf(with_(held))).toEqual(['carriage-lock'])
    expect(faultsOf(with_(eye.filter((one, index) => one.action !== 'unlock' || index < 12)))).toEqual([
      'carriage-lock',
    ])
  })
  it('a plunge with the carriage let go', () => {
    const loose = eye.filter((one, index) => one.action !== 'lock' || index !== 10)
    expect(faultsOf(with_(loose))).toContain('carriage-lock')
  })
  it('a carriage moved by eye and then by a dial that was never set', () => {
    const mixed = [...begin, move('unlock'), seen(1.129), move('move-carriage', 'carriage', 1)]
    expect(faultsOf(with_(mixed))).toContain('open-zero')
  })
  it('an indicator that cannot follow so far', () => {
    const range = inch(0.02)
    const lathe = {
      ...bench,
      carriage: { kind: 'readout', units: 'inch', resolution: inch(0.001), reads: 'depth', range },
    } as const
    const to = (count: number) =>
      with_([
        ...begin.slice(0, 4),
        move('zero', 'carriage'),
        ...begin.slice(4),
        move('unlock'),
        move('move-carriage', 'carriage', count),
      ])
    expect(faultsOf(to(20), setup, lathe)).not.toContain('beyond-travel')
    expect(faultsOf(to(21), setup, lathe)).toContain('beyond-travel')
  })
})

describe('not-clear', () => {
  it('backed out by less than the backlash', () => {
    expect(faultsOf(swapped(out(-50), [out(-8)], 1))).toContain('not-clear')
    expect(faultsOf(swapped(out(-50), [out(-9)], 1))).not.toContain('not-clear')
  })
})

describe('open-zero', () => {
  it('no take-up', () => expect(faultsOf(with_(neckMoves.slice(1)))).toContain('open-zero'))
  it('a take-up shorter than the backlash', () => {
    const short = [move('take-up', 'compound', null, 5), ...neckMoves.slice(1)]
    expect(faultsOf(with_(short))).toContain('open-zero')
  })
  it('a take-up of just the backlash', () => {
    const just = [move('take-up', 'compound', null, 6), ...neckMoves.slice(1)]
    expect(faultsOf(with_(just))).toEqual([])
  })
  it('carriage not locked', () => {
    const faults = faultsOf(with_(neckMoves.filter(({ action }) => action !== 'lock')))
    expect(faults).toEqual(expect.arrayContaining(['open-zero', 'carriage-lock']))
  })
  it('set again after metal was cut', () => {
    const moves = [...neckMoves.slice(0, 9), move('zero', 'cross-feed'), ...neckMoves.slice(9)]
    expect(faultsOf(with_(moves))).toContain('open-zero')
  })
  it('a zero set where the tool would stand in the work', () => {
    expect(faultsOf({ ...neck, off: { along: 0, deep: inch(0.025) } })).toContain('open-zero')
    const corners = (outBy: number) => rounded.moves.map((one) => (one.count === -115 ? out(outBy) : one))
    // Backed out too little, more than its tip meets the face, and the corner comes out short of it.
    expect(faultsOf({ ...rounded, moves: corners(-20) })).toContain('metal-left')
    // .020 of it: R − √(R² − .020²) is .0016 early, more than half a mark; .007 of it .0002.
    expect(faultsOf({ ...rounded, moves: corners(-105) })).toEqual(['metal-left'])
    expect(faultsOf({ ...rounded, moves: corners(-118) })).toEqual([])
  })
  it('a reading before there is a zero', () => {
    expect(faultsOf(with_([move('align'), feed(10)]))).toContain('open-zero')
  })
})

describe('the other rules', () => {
  it('between-marks', () => {
    expect(faultsOf(swapped(feed(52), [feed(51.5)]))).toContain('between-marks')
    expect(faultsOf(swapped(feed(52), [feed(Number.NaN)]))).toContain('between-marks')
    expect(faultsOf(swapped(feed(52), [move('feed-in', 'cross-feed')]))).toContain('between-marks')
    expect(faultsOf(with_([...begin, move('move-carriage', 'carriage', 1)]))).toContain('open-zero')
  })
  it('half a mark can be read where the lathe says so', () => {
    const eye = { ...bench, crossFeed: { ...bench.crossFeed, readTo: 0.5 } } as typeof bench
    const moves = neckMoves.map((one) =>
      one.slide === 'cross-feed' && typeof one.count === 'number' ? { ...one, count: one.count * 2 } : one,
    )
    expect(faultsOf(with_(moves), setup, eye)).toEqual([])
  })
  it('spindle-standing: cut', () => {
    const moves = neckMoves.filter(({ action }) => action !== 'start')
    expect(faultsOf(with_(moves))).toEqual(['spindle-standing'])
  })
  it('spindle-standing: measured', () => {
    const moves = neckMoves.filter(({ action }) => action !== 'stop')
    expect(faultsOf(with_(moves))).toEqual(['spindle-standing'])
  })
  it('beyond-travel', () => {
    const short = { ...bench, compound: { ...bench.compound, travel: inch(0.027) } }
    const faults = replay(short, setup, [neck]).faults
    expect(faults.map(({ kind }) => kind)).toEqual(['beyond-travel'])
    expect(toInch(faults[0]?.by)).toBeCloseTo(0.001, 9)
    const enough = { ...bench, compound: { ...bench.compound, travel: inch(0.028) } }
    expect(replay(enough, setup, [neck]).faults).toEqual([])
  })
  it('deeper than the reach', () => {
    expect(faultsOf({ ...neck, edge: square(0.148, 0.07) })).toEqual(['shank-or-obstacle'])
    expect(faultsOf({ ...neck, edge: square(0.148, 0.072) })).toEqual([])
  })
  it('shank over a higher step', () => {
    const edge = { ...square(0.148, 0.1), shank: { from: inch(-0.082), to: inch(0.23) } }
    const stepped = bar([1.5, 1.3], [1.6, 2.7])
    expect(faultsOf({ ...neck, edge }, stepped)).toEqual(['shank-or-obstacle'])
    expect(faultsOf({ ...neck, edge: { ...edge, reach: inch(0.125) } }, stepped)).toEqual([])
  })
  it('too near the jaws', () => {
    expect(faultsOf(neck, { ...setup, jaws: inch(1.5) })).toEqual(['shank-or-obstacle'])
    expect(faultsOf(neck, { ...setup, jaws: inch(1.531) })).toEqual([])
  })
  it('a tool where the center is', () => {
    const edge = { ...square(0.148), shank: { from: inch(-1.2), to: inch(0.148) } }
    const centered = { ...setup, tailstockCenter: true }
    expect(faultsOf({ ...neck, edge }, centered)).toEqual(['shank-or-obstacle'])
    expect(faultsOf({ ...neck, edge })).toEqual([])
    // From 1.125 it reaches back 1.2, so .075 past the free end; and .020 more as it goes past 0 and returns.
    const past = replay(bench, centered, [{ ...neck, edge }]).faults.map(({ by }) => toInch(by))
    expect(Math.max(...past)).toBeCloseTo(0.095, 9)
  })
  it('metal-left', () => {
    expect(faultsOf(swapped(feed(72), [feed(71)]))).toEqual(['metal-left'])
    expect(faultsOf(swapped(across(8), [across(7)]))).toContain('metal-left')
  })
})
