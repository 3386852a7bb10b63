import { describe, expect, it } from 'vitest'
import type { Operation } from '../../src/moves/operation.ts'
import type { Shift } from '../../src/replay/bench.ts'
import { startOf } from '../../src/replay/replay.ts'
import { runOperation } from '../../src/replay/run.ts'
import { madeRight } from '../../src/replay/shifted.ts'
import { formed, pulley, rounded, stepped, swung } from './operations.ts'
import { back, bar, begin, bench, feed, groove, inch, move, out, shift, toInch } from './shop.ts'

const setup = bar([1.5, 4])

/** Every reading that is moved to, wrong both ways, and one that nothing is moved to. */
const shiftsOf = ({ moves }: Operation): Shift[] =>
  [...moves, { slide: 'cross-feed' as const, count: 99_999 }].flatMap(({ slide, count }) =>
    slide === undefined || typeof count !== 'number'
      ? []
      : [0.002, -0.002].map((by) => ({ slide, count, by: inch(by) })),
  )

/** Straight back without going past: where the tool stands depends on the backlash, and so do the sizes; then it goes on with readings that may be wrong. */
const slack: Operation = {
  ...groove(1.125, 0.156, 0.072, [
    ...begin,
    shift(8),
    feed(52),
    out(-50),
    back(0),
    feed(72),
    out(-50),
    shift(8),
    feed(72),
    out(-50),
  ]),
  dimensions: (['width', 'depth', 'near', 'far', 'flatness'] as const).map((id) => ({ id, aim: 0, limits: null })),
}

it('a place that is found by eye too far toward the headstock is too far by just that', () => {
  const free = [move('unlock', 'carriage'), { ...move('move-carriage', 'carriage'), place: inch(1.2) }]
  const operation: Operation = {
    ...groove(1.125, 0.156, 0.072, [...begin, ...free, move('lock', 'carriage'), feed(72), out(-50)]),
    dimensions: [{ id: 'near', aim: 0, limits: null }],
  }
  const near = (by: number) => {
    const shift: Shift = { slide: 'carriage', place: inch(1.2), by: inch(by) }
    const options = { rules: false, shift }
    return toInch(runOperation(bench, setup, operation, startOf(setup), options).trace.sizes[0]!.surely)
  }
  expect([near(0.01), near(-0.01)]).toEqual([expect.closeTo(1.21, 9), expect.closeTo(1.19, 9)])
})

describe('replays that part where a wrong reading is first used', () => {
  it.each(Object.entries({ formed, stepped, rounded, pulley, swung, slack }))(
    'end at the sizes of a replay from the start: %s',
    (_, operation) => {
      const before = startOf(setup)
      const shifts = shiftsOf(operation)
      const right = madeRight(bench, setup, operation, before)
      const planned = runOperation(bench, setup, operation, before, { rules: false, shift: null }).trace
      expect({ ...right.trace, slides: planned.slides }).toEqual(planned)
      const whole = shifts.map(
        (shift) => runOperation(bench, setup, operation, before, { rules: false, shift }).trace.sizes,
      )
      expect(shifts.map(right.shifted)).toEqual(whole)
      expect(new Set(whole.map((one) => JSON.stringify(one))).size).toBeGreaterThan(2)
      // With backlash to decide, the two forms are two, and stay two.
      const open = whole.filter((one) => one.some(({ surely, possibly }) => surely !== possibly))
      if (operation === slack) expect(open).toEqual(whole)
    },
  )
})
