import { describe, expect, it } from 'vitest'
import type { Form } from '../../src/moves/form.ts'
import type { Operation } from '../../src/moves/operation.ts'
import { peak } from '../../src/replay/form/curve.ts'
import { leastForms } from '../../src/replay/least.ts'
import { rounded, stepped } from './operations.ts'
import { bar, inch, neck, toInch } from './shop.ts'

/** What must be cut at the least, half a mark of .001 either way. */
const { stock } = bar([1.5, 4])
const box = { along: inch(0.0005), deep: inch(0.0005) }
const cusp = { most: inch(0.001), given: true }

describe('the least that must be cut', () => {
  it('of a groove is half a mark narrower at each wall and half a mark higher', () => {
    const [form, ...more] = leastForms(neck, stock, box, [])
    expect(more).toEqual([])
    // Beside it the surface: half a mark higher, and looked at for half a mark.
    expect(form!.map(({ from, to, curve }) => [from, to, curve.kind === 'line' ? curve.d0 : null].map(toInch))).toEqual(
      [
        [expect.closeTo(1.1245, 9), expect.closeTo(1.1255, 9), expect.closeTo(-0.7505, 9)],
        [expect.closeTo(1.1255, 9), expect.closeTo(1.2805, 9), expect.closeTo(-0.6785, 9)],
        [expect.closeTo(1.2805, 9), expect.closeTo(1.2815, 9), expect.closeTo(-0.7505, 9)],
      ],
    )
  })
  it('of a hollow that is stepped along is besides as much higher as a ridge may be', () => {
    const deepest = (operation: Operation) => {
      const [form] = leastForms(operation, stock, box, [inch(0.001)])
      return toInch(Math.max(...form!.map((piece) => peak(piece).d)))
    }
    // Moved half a mark to either side a circle meets itself a little above its bottom.
    const meets = (r: number) => r - Math.sqrt(r ** 2 - 0.0005 ** 2)
    expect(deepest(stepped)).toBeCloseTo(0.06 - 0.75 - 0.0005 - meets(0.125), 9)
    expect(deepest({ ...stepped, cusp })).toBeCloseTo(0.06 - 0.75 - 0.0005 - 0.001 - meets(0.124), 9)
  })
  it('is a form: pieces in their order that are wider than nothing, within half a mark of what is wanted', () => {
    const forms = [neck, rounded, stepped, { ...stepped, cusp }, { ...rounded, cusp }].flatMap((operation) => {
      const [first, last] = [operation.wanted[0]!.from - box.along, operation.wanted.at(-1)!.to + box.along]
      return leastForms(operation, stock, box, [inch(0.001)]).map((form: Form) => ({ form, first, last }))
    })
    expect(forms.length).toBe(5)
    for (const { form, first, last } of forms) {
      expect(form[0]!.from).toBeGreaterThanOrEqual(first)
      expect(form.at(-1)!.to).toBeLessThanOrEqual(last)
      for (const [i, { from, to }] of form.entries()) {
        expect(to).toBeGreaterThan(from)
        expect(from).toBeGreaterThanOrEqual(form[i - 1]?.to ?? from)
      }
    }
  })
})
