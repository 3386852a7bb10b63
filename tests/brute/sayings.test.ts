import { describe, expect, it } from 'vitest'
import { bruteForce } from './brute-force.ts'
import { changed, squareSheet } from './hand-sheets.ts'
import type { Sheet, SheetStep } from './sheet-shape.ts'

const said = (number: number, say: string): string =>
  bruteForce(changed(squareSheet(), (step: SheetStep) => (step.number === number ? { say } : null))).problems.join()

const withTurnsOut = (say: string): Sheet =>
  changed(squareSheet(), (step) => (step.number === 23 ? { reading: -0.53, say } : null))

describe('what a step says in words', () => {
  it('is let pass when it is what the numbers say', () => {
    expect(said(11, 'CROSS-FEED in to 50; .050 deep, 1.150 dia')).toBe('')
    expect(said(12, 'CROSS-FEED OUT past 0, stop at 70; clears by .022')).toBe('')
    expect(said(25, 'MEASURE; width, .2000 expected; depth, .060 expected; bottom diameter, 1.130 expected')).toBe('')
    expect(bruteForce(withTurnsOut('OUT past 0 (6 times), stop at 70')).problems).toEqual([])
  })

  it('is found out when it promises another depth, diameter, clearance or size', () => {
    expect(said(11, 'CROSS-FEED in to 50; .051 deep, 1.150 dia')).toContain('the depth is')
    expect(said(11, 'CROSS-FEED in to 50; .050 deep, 1.148 dia')).toContain('the diameter is')
    expect(said(12, 'CROSS-FEED OUT past 0, stop at 70; clears by .023')).toContain('the clearance is')
    expect(said(12, 'CROSS-FEED OUT past 0, stop at 70; clears by .019')).toContain('the clearance is')
    expect(said(25, 'MEASURE; width, .2020 expected; depth, .060 expected')).toContain('the width is')
    expect(said(25, 'MEASURE; width, .2000 expected; bottom diameter, 1.140 expected')).toContain(
      'the bottom diameter is',
    )
  })

  it('is found out when it miscounts the turns', () => {
    expect(bruteForce(withTurnsOut('OUT past 0 (5 times), stop at 70')).problems.join()).toContain(
      'zero goes by 6 times',
    )
    expect(bruteForce(withTurnsOut('OUT 5 whole turns more, count them')).problems.join()).toContain('turns to count')
  })
})
