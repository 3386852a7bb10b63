import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Form } from '../../src/moves/form.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { differ, excess } from '../../src/replay/form/compare.ts'
import { cutInto } from '../../src/replay/form/insert.ts'
import { swept } from '../../src/replay/form/sweep.ts'
import { replay } from '../../src/replay/replay.ts'
import { fresh, turned } from '../../src/replay/slide.ts'
import {
  back,
  bar,
  begin,
  bench,
  corner,
  feed,
  groove,
  inch,
  move,
  out,
  past,
  round,
  shift,
  square,
  toInch,
  vee,
} from './shop.ts'

const setup = bar([1.5, 4])
const edges = fc.constantFrom(square(0.02), round(0.0625), corner(0.05), vee(0.01, 38, 0.1))
const lost = (b: number) =>
  ({ ...bench, compound: { ...bench.compound, scale: { ...bench.compound.scale, backlash: inch(b) } } }) as typeof bench

describe('a slide', () => {
  it('is an interval that holds every lost motion between none and the stated one', () => {
    const readings = fc.array(fc.integer({ min: -30, max: 30 }), { maxLength: 20 })
    fc.assert(
      fc.property(
        readings,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (marks, part, first) => {
          let slide = fresh(bench.crossFeed)
          const b = part * inch(0.008)
          let s = first * b
          for (const mark of marks) {
            const dial = inch(mark / 1000)
            slide = turned(slide, dial)
            s = Math.min(Math.max(s, dial), dial + b)
            expect(s).toBeGreaterThanOrEqual(slide.at[0] - 1)
            expect(s).toBeLessThanOrEqual(slide.at[1] + 1)
          }
        },
      ),
    )
  })
  it('on a dial that reads diameter moves half of what is read, lost motion too', () => {
    const slide = fresh({ ...bench.crossFeed, reads: 'diameter' } as typeof bench.crossFeed)
    expect([slide.step, slide.lost].map(toInch)).toEqual([0.0005, 0.004])
  })
})

describe('a round tool plunged, moved on, and brought back the wrong way', () => {
  const moves = [
    ...begin,
    feed(30),
    out(-50),
    shift(6),
    feed(30),
    out(-50),
    // Turned straight back to 0: with no lost motion it stands at 0, with all of it still at 6; both were cut before.
    back(0),
    feed(30),
    out(-50),
  ]
  const oil: Operation = { ...groove(1.1, 0.1, 0.03, moves), edge: round(0.0625) }
  const formFor = (b: number): Form => replay(lost(b), setup, [oil]).operations[0]!.surely

  it('looks alike for no backlash and for all of it, checked one at a time', () => {
    const none = replay(lost(0), setup, [oil]).operations[0]!
    expect(differ(none.surely, none.possibly)).toBeNull()
  })
  it('is seen as open all the same', () => {
    const trace = replay(bench, setup, [oil])
    expect(trace.faults.map(({ kind }) => kind)).toContain('open-form')
    const { surely, possibly } = trace.operations[0]!
    // Half way between the two plunges a third one stands deeper than both.
    const cusp = inch(0.0625) - Math.sqrt(inch(0.0625) ** 2 - inch(0.003) ** 2)
    expect(differ(surely, possibly)?.by).toBeCloseTo(cusp, -4)
    expect(excess(formFor(0), surely)?.by).toBeLessThan(1000)
  })
  it('is seen as open by the carriage too', () => {
    const by = (count: number) => [
      move('unlock', 'carriage'),
      move('shift', 'carriage', count),
      move('lock', 'carriage'),
      feed(30),
      out(-50),
    ]
    // The carriage has .030 of lost motion in marks of .010: from 4 straight back to 1 it may be anywhere between.
    const set = [
      move('take-up', 'carriage', null, 5),
      ...begin.slice(0, 4),
      move('zero', 'carriage'),
      ...begin.slice(4),
    ]
    const wide = (moves: readonly Move[]): Operation => ({ ...groove(1.1, 0.2, 0.03, moves), edge: round(0.0625) })
    const open = replay(bench, setup, [wide([...set, feed(30), out(-50), ...by(4), ...by(1)])])
    const { surely, possibly } = open.operations[0]!
    expect(differ(surely, possibly)?.by).toBeGreaterThan(inch(0.002))
    const good = replay(bench, setup, [wide([...set, feed(30), out(-50), ...by(4)])]).operations[0]!
    expect(differ(good.surely, good.possibly)).toBeNull()
    // What is surely cut is what both places have in common with the cuts before: nothing more than those.
    expect(differ(surely, good.surely)).toBeNull()
  })
  it('is closed when it goes past first', () => {
    const good = { ...oil, moves: [...moves.slice(0, -3), past(-20), back(0), feed(30), out(-50)] }
    const { surely, possibly } = replay(bench, setup, [good]).operations[0]!
    expect(differ(surely, possibly)).toBeNull()
  })
})

describe('surely cut and possibly cut', () => {
  it('bound what any one lost motion cuts, moves good or bad, the compound at any angle', () => {
    const turn = fc.tuple(
      fc.constantFrom('cross-feed' as const, 'compound' as const),
      fc.integer({ min: -20, max: 40 }),
    )
    const turns = fc.array(turn, { maxLength: 14 })
    const marks = (most: number) => fc.integer({ min: 0, max: most })
    fc.assert(
      fc.property(
        turns,
        marks(8),
        marks(6),
        fc.constantFrom(0, 30, -20, 90, 5.73),
        edges,
        (made, x, c, angle, edge) => {
          const free = made.map(([slide, count]) => move(slide === 'cross-feed' ? 'feed-in' : 'shift', slide, count))
          const at = inch(1.1) + edge.pieces[0]!.from
          const placing = { point: 'tailstock-corner', against: { line: at } } as const
          const any = { ...groove(1.1, 0.1, 0.03, [...begin, ...free]), edge, angle, placing }
          const { surely, possibly } = replay(bench, setup, [any]).operations[0]!
          const real = walked(x / 1000, c / 1000, made, any)
          expect(excess(real, possibly)?.by).toBeLessThan(1000)
          expect(excess(surely, real)?.by).toBeLessThan(1000)
        },
      ),
      { numRuns: 300 },
    )
  })
})

type Turn = readonly ['cross-feed' | 'compound', number]

/** One lathe with one lost motion in each screw: every turn of a dial is a straight way of the tool. */
const walked = (x: number, c: number, turns: readonly Turn[], { edge, angle }: Operation): Form => {
  const lostMotion = { 'cross-feed': inch(x), compound: inch(c) }
  const [sin, cos] = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)]
  const part = [...setup.stock]
  let slides = { 'cross-feed': inch(-0.05) + inch(x), compound: 0 }
  // A hollow quarter is as deep as its radius where the work is met first; every other edge is met where it is 0 deep.
  const met = edge.pieces[0]!.curve.kind === 'arc' && edge.pieces[0]!.curve.side === -1 ? edge.pieces[0]!.curve.r : 0
  const placeNow = () => ({
    z: inch(1.1) + slides.compound * cos,
    d: inch(-0.75) - met + slides['cross-feed'] + slides.compound * sin,
  })
  const touched = { z: inch(1.1), d: inch(-0.75) - met }
  cutInto(part, swept(edge.pieces, [[touched, touched]], 0))
  for (const [slide, count] of turns) {
    const from = placeNow()
    const dial = inch(count / 1000)
    slides = { ...slides, [slide]: Math.min(Math.max(slides[slide], dial), dial + lostMotion[slide]) }
    cutInto(part, swept(edge.pieces, [[from, placeNow()]], 0))
  }
  return part
}
