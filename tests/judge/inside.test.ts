import { expect, it } from 'vitest'
import { judge } from '../../src/judge/judge.ts'
import { offForm } from '../../src/judge/room.ts'
import type { Form, Piece } from '../../src/moves/form.ts'
import type { Instrument, Operation } from '../../src/moves/operation.ts'
import type { Fault } from '../../src/moves/trace.ts'
import { cutInto } from '../../src/replay/form/insert.ts'
import { startOf } from '../../src/replay/replay.ts'
import { bar, bench, groove, inch, line } from '../replay/shop.ts'

/** A groove .250 wide at 1.000 in a bar of 1.500; what was cut is put down by hand. Half a mark is .0005 each way. */
const setup = bar([1.5, 4])
const before = startOf(setup)
const level = (near: number, far: number, depth: number): Piece =>
  line(inch(near), inch(depth - 0.75), inch(far), inch(depth - 0.75))
const cut = (...pieces: readonly Piece[]): Form => {
  const part = [...setup.stock]
  cutInto(part, pieces)
  return part
}
const NO_TRACE = { zero: { fromEnd: 0, diameter: 0 }, slides: [], sizes: [], at: {}, clearance: {}, taken: {}, met: {} }
const drawn = (...ids: readonly Instrument[]): Operation => ({
  ...groove(1, 0.25, 0.1, []),
  dimensions: ids.map((id) => ({ id, aim: inch(id === 'depth' ? 0.1 : 0.25), limits: null })),
})

it('a part whose sizes all hold is proven only where no metal is gone and none is left anywhere', () => {
  const fault = (kind: Fault['kind']): Fault => ({ kind, operation: 0, move: 3, by: 1, say: '' })
  const faults = [fault('outside-form'), fault('metal-left')]
  const judged = (form: Form) => {
    const {
      sizes,
      proven,
      gone,
      left,
      faults: counted,
    } = judge(bench, drawn('width', 'depth'), before, { ...NO_TRACE, surely: form, possibly: form }, faults)
    const holds = sizes.map(({ verdict }) => verdict === 'holds')
    return { holds, proven, gone: gone > 0, left: left > 0, counted: counted.length }
  }
  const whole = level(1, 1.25, 0.1)
  const holds = [true, true]
  expect(judged(cut(whole))).toEqual({ holds, proven: true, gone: false, left: false, counted: 0 })
  // A slot elsewhere.
  expect(judged(cut(whole, level(2, 2.1, 0.05)))).toEqual({ holds, proven: false, gone: true, left: false, counted: 2 })
})

it('a cut that depends on the backlash counts from the very first move on, what is only seen on the form does not', () => {
  const whole = cut(level(1, 1.25, 0.1))
  const judged = (move: number) => {
    const faults: readonly Fault[] = [{ kind: 'open-form', operation: 0, move, by: 1, say: '' }]
    return judge(bench, drawn('width', 'depth'), before, { ...NO_TRACE, surely: whole, possibly: whole }, faults).proven
  }
  expect([judged(-1), judged(0), judged(1)]).toEqual([true, false, false])
})

it('a wall has no more room along for what it may be off in depth, in a shallow groove neither', () => {
  const shallow = { ...groove(1, 0.25, 0.02, []), dimensions: [] }
  const gone = (near: number) => {
    const form = cut(level(near, 1.25, 0.02))
    return offForm(bench, shallow, before, { surely: form, possibly: form }).gone > 0
  }
  expect(gone(0.9995)).toBe(false)
  expect(gone(0.999)).toBe(true)
})
