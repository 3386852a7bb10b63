import { describe, expect, it } from 'vitest'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { replay } from '../../src/replay/replay.ts'
import { bar, begin, bench, groove, inch, line, move, neck, past, shift, toInch } from './shop.ts'

/** How the zeros come to be where they are: what was turned before, between and after the tool is brought and touches. By hand from the marks turned. */
const setup = bar([1.5, 4])
/** The diameter of this is 1 + z / 5; of a square end .148 wide the corner toward the headstock touches it. */
const taper = { ...setup, stock: [line(0, inch(-0.5), inch(4), inch(-0.9))] }
const on = (z: number): number => 1 + (z + 0.148) / 5
const run = (moves: readonly Move[], more: Partial<Operation> = {}, where = setup) =>
  replay(bench, where, [{ ...groove(1.125, 0.2, 0.072, moves), ...more }])
const zero = (...of: Parameters<typeof run>) => {
  const { fromEnd, diameter } = run(...of).operations[0]!.zero
  return [toInch(fromEnd), toInch(diameter)]
}
const about = (...values: readonly number[]) => values.map((value) => expect.closeTo(value, 8))
const more = (slide: 'compound' | 'carriage', marks: number) => move('take-up', slide, null, marks)
const touch = [move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
const [SIN, COS] = [1 / 2, Math.cos(Math.PI / 6)]
const swung = { angle: 30 }

describe('along the work', () => {
  it('a slide that is turned on after the tool was brought takes its zero with it', () => {
    expect(zero([more('compound', 11), move('align'), more('compound', 5), move('zero', 'compound')])[0]).toBeCloseTo(
      1.13,
      9,
    )
    // Marks of .010.
    const held = [more('carriage', 4), move('align'), move('lock')]
    expect(zero([...held, more('carriage', 2), move('zero', 'carriage')])[0]).toBeCloseTo(1.145, 9)
  })
  it('of that counts at least what is left of it after all the lost motion', () => {
    expect(zero([move('align'), more('compound', 10), move('zero', 'compound')])[0]).toBeCloseTo(1.129, 9)
  })
  it('what is turned before that does not count', () => {
    const moves = [move('align'), more('compound', 11), move('align'), move('zero', 'compound')]
    expect(zero(moves)[0]).toBeCloseTo(1.125, 9)
  })
  it('is off by what the tool is off', () => {
    expect(zero(begin, { off: { along: inch(0.002), deep: 0 } })).toEqual(about(1.127, 1.5))
  })
})

describe('in depth', () => {
  it('is off by what the touch is off, and otherwise to the picometer where it touches', () => {
    const { diameter } = run(begin).operations[0]!.zero
    expect(diameter).toBe(inch(1.5))
    expect(zero(begin, { off: { along: 0, deep: inch(0.002) } })).toEqual(about(1.125, 1.496))
  })
  it('counts from the reading at which the tool touches again', () => {
    // It is backed out by .050 there.
    expect(zero([...begin, touch[0]!])[1]).toBeCloseTo(1.4, 9)
  })
  it('a swung compound that stands at a reading when the tool touches has gone in by the sine of it', () => {
    const head = begin.slice(0, 4)
    expect(zero([...head, shift(8), ...touch], swung)).toEqual(about(1.125, 1.5 + 2 * 0.008 * SIN))
    // Turned back without taking up: counted as without lost motion.
    expect(zero([...head, past(-20), ...touch], swung)[1]).toBeCloseTo(1.5 - 2 * 0.02 * SIN, 8)
  })
  it('a swung compound that is fed after the touch, and its zero set there, has gone in too', () => {
    const head = [more('compound', 11), move('align'), ...touch]
    expect(zero([...head, more('compound', 10), move('align'), move('zero', 'compound')], swung)).toEqual(
      about(1.125, 1.5 - 2 * 0.01 * SIN),
    )
  })
  it('stays as it was found when the tool is brought to its place again', () => {
    expect(zero([...begin, past(-20), move('align')], swung)).toEqual(about(1.125 + 0.02 * COS, 1.5))
  })
})

describe('what a tool touches', () => {
  it('is where it was brought, or will be; where the slides have gone since, it is there', () => {
    const brought = [more('compound', 11), move('align')]
    expect(zero([...brought, ...touch], {}, taper)[1]).toBeCloseTo(on(1.125), 8)
    expect(zero(touch, {}, taper)[1]).toBeCloseTo(on(1.125), 8)
    expect(zero([...brought, more('compound', 100), ...touch], {}, taper)[1]).toBeCloseTo(on(1.225), 8)
    // The hand believes it to be at its line.
    expect(zero([...brought, ...touch], { off: { along: inch(0.05), deep: 0 } }, taper)[1]).toBeCloseTo(on(1.125), 8)
  })
  it('may be another diameter than the one named, by so much on the radius', () => {
    const { faults } = run(begin, { touch: { diameter: inch(1.4), at: null } })
    const [seen] = faults.filter(({ kind }) => kind === 'set-up')
    expect(seen!.say).toBe('The tool touches another diameter than the one named.')
    expect(toInch(seen!.by)).toBeCloseTo(-0.05, 9)
    expect(run(begin).faults.filter(({ kind }) => kind === 'set-up')).toEqual([])
    // Up to a micrometer on the radius it is the same.
    const larger = (by: number) =>
      run(begin, { touch: { diameter: inch(1.5) + by, at: null } }).faults.filter(({ kind }) => kind === 'set-up')
    expect(larger(2_000_000)).toEqual([])
    expect(larger(-2_000_000)).toEqual([])
    expect(larger(2_000_002)).toHaveLength(1)
    expect(larger(-2_000_002)).toHaveLength(1)
  })
  it('is the diameter under that point of the edge, be it the very end', () => {
    const named = (diameter: number) =>
      run([move('align'), ...touch], { touch: { diameter: inch(diameter), at: null } }, taper)
        .faults.filter(({ say }) => say === 'The tool touches another diameter than the one named.')
        .map(({ by }) => toInch(by))
    expect(named(on(1.125))).toEqual([])
    expect(named(on(1.125) + 0.001)).toEqual([expect.closeTo(0.0005, 8)])
  })
  it('may be nothing: then it is where the diameter named would be', () => {
    const placing = { point: 'tailstock-corner', against: { line: inch(5) } } as const
    const operation = { placing, touch: { diameter: inch(1.2), at: null }, lines: [inch(5)] }
    const { faults } = run([move('align'), ...touch], operation)
    expect(faults.map(({ say }) => say)).toContain('The tool touches nothing where it is to be touched off.')
    expect(zero([move('align'), ...touch], operation)).toEqual(about(5, 1.2))
  })
  it('ends the time in which it must keep clear', () => {
    const kinds = run([...begin, move('stop'), touch[0]!, shift(3)]).faults.map(({ kind }) => kind)
    expect(kinds).not.toContain('not-clear')
    expect(run([...neck.moves.slice(0, 10), shift(3)]).faults.map(({ kind }) => kind)).not.toContain('not-clear')
  })
})

describe('a face that the tool is fed to', () => {
  /** The corner toward the headstock is brought .050 short of a shoulder at 1, the reference point to .802. */
  const shouldered = bar([1.5, 1], [1.9, 3])
  const beside = { placing: { point: 'headstock-corner', against: { beside: inch(1), gap: inch(0.05) } } } as const
  const head = [more('compound', 11), move('align'), move('lock'), ...touch]
  const out = (marks: number) => move('back-out', 'cross-feed', -marks)
  const [face, none, inside] = [
    move('touch-off', 'compound'),
    'The tool touches nothing where it is to be touched off.',
    'The tool is in the work where it is to be fed to a touch.',
  ]
  const said = (moves: readonly Move[], angle = 0, where = shouldered) =>
    run(moves, { ...beside, angle }, where).faults.map(({ say }) => say)
  const at = (moves: readonly Move[], angle = 0) => zero(moves, { ...beside, angle }, shouldered)
  const found = [...head, out(60), face, move('zero', 'compound')]
  it('is where its corner stands then', () => {
    expect(at(found)).toEqual(about(0.852, 1.5))
    expect(said(found)).not.toContain(none)
    expect(said(found)).not.toContain(inside)
  })
  it('on a slant is met further in, and nobody knows by how much that shifts the depth', () => {
    expect(at(found, 30)).toEqual(about(0.852, 1.5 - 2 * 0.05 * Math.tan(Math.PI / 6)))
    const kinds = (moves: readonly Move[], angle: number) =>
      run(moves, { ...beside, angle }, shouldered).faults.map(({ kind }) => kind)
    expect(kinds(found, 30)).toContain('shifted-zero')
    expect(kinds(found, 0)).not.toContain('shifted-zero')
    // Before the cross-feed has touched there is nothing to shift.
    expect(kinds([more('compound', 11), move('align'), face], 30)).not.toContain('shifted-zero')
  })
  it('met by the carriage is met straight along the work', () => {
    const moves = [...head.filter(({ action }) => action !== 'lock'), out(60), move('touch-off', 'carriage')]
    expect(at([...moves, move('zero', 'carriage')], 30)).toEqual(about(0.852, 1.5))
  })
  it('leaves a dial that has its zero already at its reading', () => {
    const zeroed = [more('compound', 11), move('align'), move('lock'), move('zero', 'compound'), ...touch, out(60)]
    expect(at([...zeroed, face])).toEqual(about(0.802, 1.5))
    expect(at([...zeroed, shift(20), face])).toEqual(about(0.802, 1.5))
  })
  it('may not be there, or the tool be in the work already; where its depth is not known nothing is said', () => {
    expect(said([...head, out(60), face], 0, setup)).toContain(none)
    expect(said([...head, move('feed-in', 'cross-feed', 10), face])).toContain(inside)
    for (const say of [none, inside]) expect(said([more('compound', 11), move('align'), face])).not.toContain(say)
  })
  it('without having been brought is taken from where it was to be', () => {
    expect(at([face, move('zero', 'compound')])[0]).toBeCloseTo(0.802, 9)
  })
})

describe('a slide that is taken up too late', () => {
  it('digs the tool in, where it touches already, by as much as it is fed', () => {
    const moves = [...begin.slice(0, 5), move('take-up', 'cross-feed', null, 3), move('zero', 'cross-feed')]
    const dug = run(moves).faults.filter(({ say }) => say.startsWith('The cross-feed is fed in after it touched'))
    expect(dug.map(({ kind, by }) => [kind, toInch(by)])).toEqual([['open-zero', expect.closeTo(0.003, 9)]])
  })
  it('comes to the reading that is so much further, which is within its travel', () => {
    const kinds = run([...begin, shift(20), more('compound', 3)]).faults.map(({ kind }) => kind)
    expect(kinds).toContain('open-zero')
    expect(kinds).not.toContain('beyond-travel')
  })
})
