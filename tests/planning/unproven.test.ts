import { describe, expect, it } from 'vitest'
import { differenceText } from '../../src/judge/say.ts'
import type { Operation } from '../../src/moves/operation.ts'
import type { Fault, OperationTrace } from '../../src/moves/trace.ts'
import { length } from '../../src/phrase/figure.ts'
import { unproven } from '../../src/planning/unproven.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { told } from '../prose.ts'

const operation = (limits: readonly [number, number] | null): Operation =>
  ({ moves: [], dimensions: [{ id: 'near', aim: INCH, limits }] }) as unknown as Operation
const trace = (surely: number): OperationTrace =>
  ({ sizes: [{ surely, possibly: surely }] }) as unknown as OperationTrace
const fault = (by: number | null): Fault =>
  ({ kind: 'moved-in-contact', move: 0, by, say: 'It moves in the work.' }) as Fault

describe('what the replay holds against a plan', () => {
  it.each([
    ['inch', 0.0125 * INCH, ', by .013'],
    // 0.00015 in.
    ['inch', 3_810_000, ', by .0002'],
    ['inch', -0.00004 * INCH, ', by .00004'],
    ['mm', 0.0003 * MM, ', by 0.0003'],
    // A few picometers are arithmetic's: the place is just met.
    ['mm', 3, ''],
    ['inch', null, ''],
  ] as const)('is never told as nothing: %s %d', (units, by, more) => {
    const refusal = unproven(units, operation(null), trace(INCH), [fault(by)])
    expect(told(refusal?.reason, units)).toBe(`the replay does not prove it: It moves in the work${more}`)
  })

  it('shows a size outside its limits outside of them: 4.349 and 4.35 within a tenth of a thousandth', () => {
    const refusal = unproven('mm', operation([4.35 * MM, 4.65 * MM]), trace(4.34985 * MM), [])
    expect(told(refusal?.reason, 'mm')).toContain('within 4.3500 to 4.6500; the nearest gives 4.3499')
    const inches = unproven('inch', operation([0.12 * INCH, 0.125 * INCH]), trace(0.125004 * INCH), [])
    expect(told(inches?.reason)).toContain('within .120000 to .125000; the nearest gives .125004')
  })
})

describe('what two sizes differ by', () => {
  it('is told as a size, or finer where that is nothing', () => {
    expect(differenceText('depth', 0.012 * INCH, 'inch')).toBe('.012')
    expect(differenceText('depth', 0.0001 * INCH, 'inch')).toBe('.0001')
    expect(differenceText('depth', 0.00003 * INCH, 'inch')).toBe('.00003')
    expect(differenceText('width', 0.0002 * MM, 'mm')).toBe('0.0002')
    expect(differenceText('angle', 0.25, 'inch')).toBe('0.25°')
    expect(differenceText('angle', 0.0004, 'inch')).toBe('0.0004°')
  })
})

describe('a difference on the sheet', () => {
  it.each([
    ['inch', 0.00002 * INCH, '0.00002'],
    ['mm', 0.0003 * MM, '0.0003'],
    ['inch', 0.0125 * INCH, '0.0125'],
    ['mm', 0, '0.00'],
  ] as const)('does not come to nothing where it is something: %s %d', (units, value, shown) => {
    const { value: plain, digits } = length('clearance', value, units)
    expect(plain.toFixed(digits)).toBe(shown)
  })

  it('gives a bound the place more that it is rounded outward from', () => {
    expect(length('low', 0.0003 * MM, 'mm').digits).toBe(3)
    expect(length('low', 0.03 * MM, 'mm').digits).toBe(2)
  })
})
