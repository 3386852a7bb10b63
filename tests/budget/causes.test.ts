import { describe, expect, it } from 'vitest'
import { causesOf } from '../../src/budget/causes.ts'
import { tilted } from '../../src/budget/tilted.ts'
import type { Accuracy } from '../../src/lathe/lathe.ts'
import type { Edge } from '../../src/moves/form.ts'
import type { Operation } from '../../src/moves/operation.ts'
import { depthAt } from '../../src/replay/form/curve.ts'
import { startOf } from '../../src/replay/replay.ts'
import { runOperation } from '../../src/replay/run.ts'
import { pulley, stepped, swung } from '../replay/operations.ts'
import { bar, begin, bench, feed, groove, inch, line, move, neck, out, shift, toInch, vee } from '../replay/shop.ts'

const setup = bar([1.5, 4])
const before = startOf(setup)
const ALL: Accuracy = { ...bench.accuracy, reading: inch(0.0005) }
const causes = (operation: Operation, accuracy: Partial<Accuracy> = {}) => {
  const lathe = { ...bench, accuracy: { ...ALL, ...accuracy } }
  const { trace } = runOperation(lathe, setup, operation, before, { rules: false, shift: null })
  return causesOf(lathe, operation, before, trace)
}
/** Which readings count, by slide; `every` left out. */
const readingsOf = (operation: Operation) =>
  causes(operation).flatMap(({ ways: [{ shift: wrong }] }) =>
    wrong !== null && 'count' in wrong && wrong.count !== 'every' ? [`${wrong.slide} ${wrong.count}`] : [],
  )

describe('what may be wrong', () => {
  it('on a groove: the readings that the finished form shows, and no other', () => {
    // 52 was roughing and is gone from the floor, but both walls were cut at 0 and at 8, and the floor at 72.
    expect(readingsOf(neck).sort()).toEqual(['compound 0', 'compound 8', 'cross-feed 72'])
  })
  it('of a feed across: where it began and where it ended', () => {
    const moves = [...begin, shift(3), feed(72), move('feed-across', 'compound', 8), out(-50)]
    expect(readingsOf(groove(1.125, 0.153, 0.072, moves)).sort()).toEqual(['compound 3', 'compound 8', 'cross-feed 72'])
  })
  it('of the zero itself: no reading, it is touched and not read', () => {
    const moves = [...begin, feed(72), out(-50)]
    expect(readingsOf(groove(1.125, 0.148, 0.072, moves))).toEqual(['cross-feed 72'])
  })
  it('every error that is stated, once each, and none that is stated as nothing', () => {
    const names = (accuracy: Partial<Accuracy>) => new Set(causes(pulley, accuracy).map(({ name }) => name))
    const told = names({})
    for (const name of ['touch-off', 'layout', 'tool', 'stock', 'runout', 'swivel']) expect(told).toContain(name)
    expect(names({ layout: 0 })).not.toContain('layout')
    expect(names({ runout: 0 })).not.toContain('runout')
    expect(names({ trued: 0 })).not.toContain('swivel')
    expect(names({ stock: 0 })).not.toContain('stock')
    expect(names({ tool: 0 })).not.toContain('tool')
  })
  it('a swivel set by its scale is off by its marks, one set parallel or square by the indicator', () => {
    const swivel = (operation: Operation) => {
      const [way] = causes(operation).find(({ name }) => name === 'swivel')!.ways
      return way.operation.angle - operation.angle
    }
    expect(swivel(neck)).toBeCloseTo(0.05, 9)
    expect(swivel({ ...neck, angle: 90 })).toBeCloseTo(0.05, 9)
    expect(swivel({ ...neck, angle: -90 })).toBeCloseTo(0.05, 9)
    expect(swivel({ ...swung, angle: 29.5 })).toBeCloseTo(0.5, 9)
  })
  it('with the compound swung: its reading at the touch counts, unless it was set to zero there', () => {
    const [touch, zero] = [move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
    const head = [move('take-up', 'compound', null, 11), move('align'), move('lock'), move('zero', 'compound')]
    const rest = [out(-50), move('start'), feed(72), out(-50)]
    const at = (moves: Operation['moves'], angle = 5.74) =>
      readingsOf({ ...groove(1.125, 0.148, 0.072, moves), angle }).filter((one) => one.startsWith('compound'))
    expect(at([...head, shift(4), touch, zero, ...rest])).toContain('compound 4')
    expect(at([...head, shift(4), touch, zero, out(-50), shift(9), ...rest])).toContain('compound 4')
    expect(at([...head, shift(4), feed(-3), touch, zero, out(-50), shift(9), ...rest])).toContain('compound 4')
    expect(at([...head, touch, zero, ...rest])).toEqual([])
    expect(at([...head, shift(4), touch, zero, out(-50), shift(9), ...rest], 0)).toEqual(['compound 9'])
  })
  it('also where setting it is the very first move', () => {
    const touch = [move('touch-off', 'cross-feed'), move('zero', 'cross-feed')]
    const moves = [shift(4), ...touch, out(-50), shift(9), move('start'), feed(72), out(-50)]
    expect(readingsOf({ ...groove(1.125, 0.148, 0.072, moves), angle: 5.74 })).toContain('compound 4')
  })
  it('of a touch: as far off as stated, to the picometer, and on top of what it is off already', () => {
    const off = (operation: Operation) =>
      causes(operation).find(({ name }) => name === 'touch-off')!.ways[0].operation.off
    expect(off(neck)).toEqual({ along: 0, deep: inch(0.001) })
    expect(off({ ...neck, off: { along: 7, deep: 5 } })).toEqual({ along: 7, deep: inch(0.001) + 5 })
  })
  it('none of a slide that has no scale', () => {
    const lathe = { ...bench, carriage: null }
    const moves = [...begin, move('shift', 'carriage', 3), feed(72), out(-50)]
    const operation = groove(1.125, 0.148, 0.072, moves)
    const { trace } = runOperation(lathe, setup, operation, before, { rules: false, shift: null })
    const names = causesOf(lathe, operation, before, trace).map(({ name }) => name)
    expect(names).toContain('reading-cross-feed')
    expect(names).not.toContain('reading-carriage')
  })
  it('of a V the angle of its tool: as the tool says, or by protractor', () => {
    const within = (angleWithin: number | null | undefined) => {
      const { angleWithin: _, ...edge } = pulley.edge
      const operation = { ...pulley, edge: angleWithin === undefined ? edge : { ...edge, angleWithin } }
      const cause = causes(operation).find(({ name }) => name === 'tool-angle')
      if (cause === undefined) return null
      const [near] = cause.ways[0].operation.edge.pieces
      const run = (near!.to - near!.from) / -depthAt(near!.curve, near!.from)
      return (2 * Math.atan(run) * 180) / Math.PI
    }
    expect(within(undefined)).toBe(null)
    expect(within(0.25)).toBeCloseTo(38.25, 4)
    expect(within(null)).toBeCloseTo(38.5, 4)
  })
  it('on a stepped form all of its stations', () => {
    expect(readingsOf(stepped).filter((one) => one.startsWith('compound')).length).toBeGreaterThan(20)
  })
})

describe('an edge with curved flanks whose angle was measured wrong', () => {
  /** Flanks that a sloping face has left a little hollow: from the nose .1 along and .2 behind. */
  const curved = (side: 1 | -1): Edge => {
    const [a, b] = [0.1, 0.2]
    const chord = Math.hypot(a, b)
    const r = 1
    const back = Math.sqrt(r * r - (chord / 2) ** 2)
    // Center of the near flank's circle, square off the middle of its chord.
    const zc = -a / 2 + (side * back * b) / chord
    const dc = -b / 2 - (side * back * a) / chord
    const arc = (from: number, to: number, z: number) => ({
      from: inch(from),
      to: inch(to),
      curve: { kind: 'arc', zc: inch(z), dc: inch(dc), r: inch(r), side } as const,
      step: -1,
    })
    return {
      ...vee(0.05, 53.13, 0.2),
      pieces: [arc(-a, 0, zc), line(0, 0, inch(0.05), 0), arc(0.05, 0.05 + a, 0.05 - zc)],
    }
  }
  it.each([1, -1] as const)('keeps its nose, the depth of its ends and how curved it is (side %i)', (side) => {
    const plain = curved(side)
    const open = tilted(plain, 2)
    // tan of half the angle is 1/2; a degree more on each side.
    const ratio = Math.tan(Math.atan(0.5) + Math.PI / 180) / 0.5
    const [near, nose, far] = open.pieces
    expect(nose).toEqual(plain.pieces[1])
    expect([toInch(near!.from), toInch(near!.to)]).toEqual([expect.closeTo(-0.1 * ratio, 5), expect.closeTo(0, 9)])
    expect([toInch(far!.from), toInch(far!.to)]).toEqual([
      expect.closeTo(0.05, 9),
      expect.closeTo(0.05 + 0.1 * ratio, 5),
    ])
    expect(toInch(depthAt(near!.curve, near!.from))).toBeCloseTo(-0.2, 5)
    expect(toInch(depthAt(near!.curve, near!.to))).toBeCloseTo(0, 5)
    expect(toInch(depthAt(far!.curve, far!.from))).toBeCloseTo(0, 5)
    expect(toInch(depthAt(far!.curve, far!.to))).toBeCloseTo(-0.2, 5)
    // Off its chord by as much as the circle of radius 1 has it, on the same side as before.
    const off = ({ from, to, curve }: (typeof plain.pieces)[number]) =>
      toInch(depthAt(curve, (from + to) / 2)) - toInch(depthAt(curve, from) + depthAt(curve, to)) / 2
    expect(Math.sign(off(near!))).toBe(Math.sign(off(plain.pieces[0]!)))
    expect(off(near!) / off(plain.pieces[0]!)).toBeCloseTo(1, 1)
    expect(off(far!)).toBeCloseTo(off(near!), 5)
  })
})
