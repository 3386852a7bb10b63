import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spindleSpeed } from '../../src/handbook/spindle.ts'
import { INCH, MM } from '../../src/units/length.ts'

const BENCH = [60, 95, 150, 240, 380, 600, 950]

describe('spindle speed', () => {
  it('takes the nearest speed that is not higher: 1 1/2 in mild steel, half speed', () => {
    const choice = spindleSpeed({
      cuttingSpeed: 90,
      speedUnits: 'ft/min',
      diameter: 1.5 * INCH,
      factor: 0.5,
      speeds: BENCH,
    })
    expect(choice.wanted).toBeCloseTo(114.59, 2)
    expect(choice).toMatchObject({ rpm: 95, tooFast: false })
  })

  it('takes a speed that is exactly the wanted one', () => {
    const request = { cuttingSpeed: 20, speedUnits: 'm/min', diameter: 25 * MM, factor: 1 } as const
    const { wanted } = spindleSpeed({ ...request, speeds: [1] })
    expect(spindleSpeed({ ...request, speeds: [wanted + 1, wanted, wanted - 1] })).toEqual({
      wanted,
      rpm: wanted,
      tooFast: false,
    })
  })

  it('says so when every speed is too fast, and gives the lowest', () => {
    const choice = spindleSpeed({
      cuttingSpeed: 45,
      speedUnits: 'ft/min',
      diameter: 6 * INCH,
      factor: 0.5,
      speeds: [150, 60, 95],
    })
    expect(choice.wanted).toBeCloseTo(14.324, 3)
    expect(choice).toMatchObject({ rpm: 60, tooFast: true })
  })

  it('is not too fast by less than the published figures differ', () => {
    // 90 ft/min in the one table is 80 to 100 in the other: a tenth over is still inside. 46 against 45.84 is nothing at all.
    const on = (rpm: number) =>
      spindleSpeed({ cuttingSpeed: 90, speedUnits: 'ft/min', diameter: 3.75 * INCH, factor: 0.5, speeds: [rpm, 200] })
    expect(on(46).wanted).toBeCloseTo(45.84, 2)
    expect(on(46)).toMatchObject({ rpm: 46, tooFast: false })
    expect([on(50).tooFast, on(51).tooFast]).toEqual([false, true])
  })

  it('refuses a lathe without speeds and work without a diameter', () => {
    const request = { cuttingSpeed: 90, speedUnits: 'ft/min', diameter: INCH, factor: 0.5, speeds: [] } as const
    expect(() => spindleSpeed(request)).toThrow('no spindle speeds')
    expect(() => spindleSpeed({ ...request, diameter: 0, speeds: [60] })).toThrow('diameter 0')
  })

  it('never exceeds the wanted speed unless it says so, and nothing faster was allowed', () => {
    const numbers = fc.double({ min: 0.1, max: 1000, noNaN: true })
    fc.assert(
      fc.property(
        numbers,
        numbers,
        fc.array(fc.integer({ min: 1, max: 3000 }), { minLength: 1 }),
        (speed, mm, speeds) => {
          const choice = spindleSpeed({
            cuttingSpeed: speed,
            speedUnits: 'm/min',
            diameter: mm * MM,
            factor: 0.5,
            speeds,
          })
          expect(speeds).toContain(choice.rpm)
          expect(choice.tooFast).toBe(choice.rpm > 1.1 * choice.wanted)
          for (const rpm of speeds) {
            if (choice.rpm > choice.wanted) expect(rpm).toBeGreaterThanOrEqual(choice.rpm)
            else expect(rpm <= choice.rpm || rpm > choice.wanted).toBe(true)
          }
        },
      ),
    )
  })
})
