import { describe, expect, it } from 'vitest'
import { formingFeed, restAt } from '../../src/handbook/pace.ts'
import { INCH, MM } from '../../src/units/length.ts'

describe('the feed of a plunged tool', () => {
  it('is .002 a turn for a narrow edge, as for cutting off (US Army subcourse OD1645, 1988; War Department manual)', () => {
    expect(formingFeed(INCH / 8, 'inch') / INCH).toBeCloseTo(0.002, 12)
    expect(formingFeed(INCH / 4, 'inch') / INCH).toBeCloseTo(0.002, 12)
  })
  it('is .05 mm a turn on a metric sheet: .002 in is .0508', () => {
    expect(formingFeed(3 * MM, 'mm') / MM).toBeCloseTo(0.05, 12)
  })
  it('is half of that for a wider edge (common practice, no source)', () => {
    expect(formingFeed(INCH / 2, 'inch') / INCH).toBeCloseTo(0.001, 12)
    expect(formingFeed(12 * MM, 'mm') / MM).toBeCloseTo(0.02, 12)
  })
})

describe('the rest at the bottom', () => {
  // Three turns at 60 rpm are three seconds, at 45 rpm four (plane arithmetic).
  it('is three turns of the work, a second at the least', () => {
    expect([60, 45, 150, 900].map((rpm) => restAt(rpm, 'mild steel')?.seconds)).toEqual([3, 4, 1, 1])
    expect(restAt(60, 'mild steel')?.turns).toBe(3)
  })
  it('is none in magnesium, which a dwelling tool may set on fire (T.O. 1-1A-9 / TM 43-0106)', () => {
    expect(restAt(60, 'Magnesium AZ31')).toBeNull()
  })
})
