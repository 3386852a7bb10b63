import { describe, expect, it } from 'vitest'
import { travelAt } from '../../src/dials/travel.ts'
import type { Scale } from '../../src/lathe/lathe.ts'
import type { Slide } from '../../src/moves/operation.ts'
import { readingOf, turnTo, waysOf, wholeTurns } from '../../src/phrase/dial.ts'
import { words } from '../../src/phrase/words.ts'
import { diameterDial, inch, inchDial, metricDial, mm, readout } from './fixture.ts'

const said = (scale: Scale, from: number, to: number, slide: Slide = 'cross-feed', angle = 0): string =>
  words(turnTo(scale, waysOf(slide, angle), from, to, 'inch'), 'inch')

describe('a hand reads a dial', () => {
  const dial = inchDial()
  it.each([
    [-50, 52, 'in past 0, to 52'],
    [52, -50, 'OUT past 0, stop at 50 (.050 out, half a turn)'],
    [0, -50, 'OUT from 0 to 50 (.050 out, half a turn)'],
    [0, 125, 'in to 1 turn and 25 (.125)'],
    [0, 100, 'in to 1 turn and 0 (.100)'],
    [0, 240, 'in to 2 turns and 40 (.240)'],
    [-20, 0, 'in onto 0'],
    [379, -50, 'OUT past 0 (4 times), stop at 50 (.050 out, half a turn)'],
    [0, -170, 'OUT 1 whole turn from 0 and on to 30 (.170 out)'],
    [0, -100, 'OUT 1 whole turn from 0, onto 0 (.100 out, 1 turn)'],
    [65, -100, 'OUT past 0, stop on the next 0 (.100 out, 1 turn)'],
    [-115, -170, 'OUT, stop at 30 (.170 out)'],
    [-170, -38, 'in past 0, to 62 (.038 out)'],
    [-170, 52, 'in past 0 (2 times), to 52'],
    [9, 107, 'in to 1 turn and 7 (.107), 98 marks on'],
    [-270, 0, 'in past 0 (2 times), onto the next 0'],
    [-38, -24, 'in to 76 (.024 out)'],
    [50, 50, 'leave it at 50'],
    [80, 8, 'OUT to 8'],
  ])('from %d to %d', (from, to, words) => expect(said(dial, from, to)).toBe(words))

  it('calls the ways of the compound by where the tool goes', () => {
    expect(said(dial, 0, 8, 'compound')).toBe('toward the headstock to 8')
    expect(said(dial, 8, -20, 'compound')).toBe('back past 0, stop at 80 (.020 before 0)')
    expect(said(dial, -20, 0, 'compound')).toBe('toward the headstock onto 0')
    expect(said(dial, 0, 8, 'compound', 90)).toBe('forward to 8')
  })

  it("says a metric dial's own units, and that its marks are counted", () => {
    expect(said(metricDial, -50, 66)).toBe('in past 0, to mark 66 (1.32 mm)')
    expect(said(metricDial, 66, -50)).toBe('OUT past 0, stop at mark 100 (1.00 mm out)')
    expect(said(metricDial, 0, 160)).toBe('in to 1 turn and mark 10 (3.20 mm)')
  })

  it('warns that a diameter dial does not say how far the slide went', () => {
    expect(said(diameterDial, -100, 134)).toBe('in past 0, to 134 (.134 on the dial)')
    expect(said(diameterDial, 134, -100)).toBe('OUT past 0, stop at 100 (.100 out by the dial, half a turn)')
  })

  it('reads parts of a mark where the eye can', () => {
    const half = inchDial({ readTo: 0.5 })
    expect(said(half, 0, 105)).toBe('in to 52 1/2')
    expect(said(half, 0, -101)).toBe('OUT from 0 to 49 1/2 (.0505 out)')
  })

  it('has no turns on a readout', () => {
    expect(said(readout, -100, 104)).toBe('in to .0520 on the readout')
    expect(said(readout, 104, -100)).toBe('OUT to -.0500 on the readout')
    expect(readingOf(readout, 104)).toEqual({ value: inch(0.052), turns: null, mark: null })
  })
})

describe('readings', () => {
  it('have floor turns before zero', () => {
    expect(readingOf(inchDial(), -20)).toEqual({ value: inch(-0.02), turns: -1, mark: 80 })
    expect(readingOf(inchDial(), 125)).toEqual({ value: inch(0.125), turns: 1, mark: 25 })
    expect(readingOf(metricDial, -1)).toEqual({ value: mm(-0.02), turns: -1, mark: 149 })
  })

  it('are put together again from turns and mark', () => {
    for (let count = -401; count <= 401; count++) {
      const { value, turns, mark } = readingOf(metricDial, count)
      expect((turns ?? 0) * mm(3) + (mark ?? 0) * mm(0.02)).toBe(value)
      expect(mark).toBeGreaterThanOrEqual(0)
      expect(mark).toBeLessThan(150)
    }
  })

  it('halve to slide travelAt on a diameter dial', () => {
    expect(travelAt(diameterDial, 134)).toBe(inch(0.067))
    expect(travelAt(inchDial(), 134)).toBe(inch(0.134))
  })

  it('count whole turns only where they are whole', () => {
    expect(wholeTurns(inchDial(), -50, -550)).toBe(5)
    expect(wholeTurns(inchDial(), -50, -540)).toBeNull()
    expect(wholeTurns(readout, -50, -550)).toBeNull()
  })
})
