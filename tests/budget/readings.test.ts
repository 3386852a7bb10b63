import { describe, expect, it } from 'vitest'
import { causesOf } from '../../src/budget/causes.ts'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { startOf } from '../../src/replay/replay.ts'
import { runOperation } from '../../src/replay/run.ts'
import { rounded } from '../replay/operations.ts'
import {
  across,
  back,
  bar,
  begin,
  bench,
  feed,
  groove,
  inch,
  line,
  move,
  neck,
  out,
  past,
  shift,
} from '../replay/shop.ts'

const setup = bar([1.5, 4])
const before = startOf(setup)
const readAs = (reading: number | null): Lathe => ({
  ...bench,
  accuracy: { ...bench.accuracy, reading: reading === null ? null : inch(reading) },
})
const causes = (operation: Operation, lathe = readAs(0.0005), part = before) => {
  const { trace } = runOperation(lathe, setup, operation, part, { rules: false, shift: null })
  return causesOf(lathe, operation, part, trace)
}
const cut = (...moves: readonly Move[]): Operation => groove(1.125, 0.2, 0.072, moves)
const shifts = (operation: Operation, lathe?: Lathe) =>
  causes(operation, lathe).flatMap(({ only, ways: [{ shift: wrong }] }) =>
    wrong !== null && 'count' in wrong ? [{ ...wrong, only }] : [],
  )
/** Depths that are met again, and the move from which on they are read otherwise. */
const again = (operation: Operation) =>
  shifts(operation).flatMap(({ slide, count, from, only }) => (from === undefined ? [] : [[slide, count, from, only]]))
const readings = (operation: Operation) =>
  shifts(operation).flatMap(({ slide, count, from }) =>
    from === undefined && count !== 'every' ? [`${slide} ${count}`] : [],
  )

describe('a depth that the tool is fed in to again', () => {
  // The moves of `begin` are 0 to 7.
  const first = [...begin, feed(72), out(-50), shift(8)]
  it('at another place may come out a little otherwise, and leaves a step in the floor', () => {
    expect(again(cut(...first, feed(72), out(-50)))).toEqual([['cross-feed', 72, 11, 'flatness']])
    expect(again(cut(...begin, feed(72), out(-50)))).toEqual([])
  })
  it('for the last time is read otherwise, where it is met three times', () => {
    const thrice = cut(...first, feed(72), out(-50), shift(16), feed(72), out(-50))
    expect(again(thrice)).toEqual([['cross-feed', 72, 14, 'flatness']])
  })
  it('counts only where the finished form shows it: not on the way deeper', () => {
    expect(again(neck)).toEqual([])
    const deeper = cut(...begin, feed(40), feed(72), out(-50), shift(8), feed(40), feed(72), out(-50))
    expect(again(deeper)).toEqual([['cross-feed', 72, 13, 'flatness']])
  })
  it('counts by what is cut at it by feeding across from there', () => {
    // The second time it is fed in where it has been already: only the feed across cuts.
    const on = cut(...begin, feed(72), out(-50), feed(72), across(8), out(-50))
    expect(again(on)).toEqual([['cross-feed', 72, 10, 'flatness']])
    // Here that cuts nothing either.
    const over = cut(...begin, feed(72), across(8), out(-50), past(-20), back(0), feed(72), across(8), out(-50))
    expect(again(over)).toEqual([])
  })
  it('is a depth of the cross-feed: a compound fed in as far, or a cross-feed backed out to it, is another thing', () => {
    expect(again(rounded)).toEqual([])
    expect(again(cut(...begin, shift(3), feed(8), move('feed-in', 'compound', 8), out(-50)))).toEqual([])
    const backed = cut(...begin, feed(72), out(60), across(8), out(-50), shift(16), feed(60), out(-50))
    expect(again(backed)).toEqual([])
  })
})

describe('the reading of a swung compound at the touch', () => {
  const [touch, zero] = [move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
  const head = [move('take-up', 'compound', null, 11), move('align'), move('lock'), move('zero', 'compound')]
  const rest = [out(-50), shift(9), move('start'), feed(72), out(-50)]
  const swung = (...moves: readonly Move[]) => readings({ ...cut(...moves), angle: 5.74 })
  it('is the last one before it', () => {
    const seen = swung(...head, shift(2), shift(4), touch, zero, ...rest)
    expect(seen).toContain('compound 4')
    expect(seen).not.toContain('compound 2')
  })
  it('is that of the last touch', () => {
    const seen = swung(...head, shift(2), touch, zero, out(-50), shift(4), touch, zero, ...rest)
    expect(seen).toContain('compound 4')
    expect(seen).not.toContain('compound 2')
  })
  it('is none where nothing is touched', () => {
    const seen = swung(shift(2), ...head, zero, ...rest, shift(20), move('stop'))
    expect(seen).toContain('compound 9')
    expect(seen).not.toContain('compound 2')
    expect(seen).not.toContain('compound 20')
  })
})

describe('the reading that a cut is made at', () => {
  it('may be set by the very first move', () => {
    const found = [move('zero', 'carriage'), move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
    expect(readings(cut(shift(4), ...found, out(-50), move('start'), feed(72), out(-50)))).toContain('compound 4')
  })
  it('is gone once the dial is set to zero there', () => {
    const moves = [...begin, shift(4), move('zero', 'compound'), feed(72), out(-50)]
    expect(readings(cut(...moves))).toEqual(['cross-feed 72'])
  })
  it('is none on a slide without a scale, whatever is stated for the others', () => {
    const moves = [...begin, move('shift', 'carriage', 3), feed(72), out(-50)]
    const names = causes(cut(...moves), { ...readAs(0.0005), carriage: null }).map(({ name }) => name)
    expect(names).toContain('reading-cross-feed')
    expect(names).not.toContain('reading-carriage')
  })
  it('on a carriage is off by half of what can be read at least: its dial is coarse', () => {
    const on = [move('take-up', 'carriage', null, 4), ...begin.slice(0, 3), move('zero', 'carriage'), ...begin.slice(3)]
    const moves = [...on, feed(72), move('unlock'), move('feed-across', 'carriage', 2), move('lock'), out(-50)]
    const off = (reading: number | null) =>
      shifts(cut(...moves), readAs(reading)).find(({ slide, count }) => slide === 'carriage' && count === 2)!.by
    // Marks of .010.
    expect(off(null)).toBe(inch(0.005))
    expect(off(0.0005)).toBe(inch(0.005))
    expect(off(0.02)).toBe(inch(0.02))
  })
})

describe('an error of a zero', () => {
  it('is made both ways, on top of what is off already, and along or deep but never both', () => {
    const seen = causes({ ...neck, off: { along: 7, deep: 5 } })
    const of = (name: string) =>
      seen.find((cause) => cause.name === name)!.ways.map(({ operation, rigid }) => [operation.off, rigid])
    const [far, deep] = [inch(0.005), inch(0.001)]
    expect(of('layout')).toEqual([
      [
        { along: 7 + far, deep: 5 },
        { along: far, deep: 0 },
      ],
      [
        { along: 7 - far, deep: 5 },
        { along: -far, deep: 0 },
      ],
    ])
    expect(of('runout')).toEqual([
      [
        { along: 7, deep: 5 + deep },
        { along: 0, deep },
      ],
      [
        { along: 7, deep: 5 - deep },
        { along: 0, deep: -deep },
      ],
    ])
  })
})

describe('a surface that is larger than it was measured', () => {
  it('stands higher by half of that, and nothing else of the part does', () => {
    const [step, cone, own] = [
      line(0, inch(-0.5), inch(0.5), inch(-0.5)),
      line(inch(0.5), inch(-0.5), inch(1), inch(-0.75)),
      line(inch(1), inch(-0.75), inch(3), inch(-0.75)),
    ]
    const back = line(inch(3), inch(-0.75), inch(4), inch(-0.6))
    const part = { ...before, surely: [step, cone, own, back], possibly: [own] }
    const [more, less] = causes(neck, readAs(null), part).find(({ name }) => name === 'stock')!.ways
    const at = (radius: number) => line(inch(1), inch(-radius), inch(3), inch(-radius))
    expect(more.operation.surface).toBe(inch(1.5005))
    expect(more.before.surely).toEqual([step, cone, at(0.75025), back])
    expect(more.before.possibly).toEqual([at(0.75025)])
    expect(less.operation.surface).toBe(inch(1.4995))
    expect(less.before.surely).toEqual([step, cone, at(0.74975), back])
  })
})
