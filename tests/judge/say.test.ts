import { describe, expect, it } from 'vitest'
import type { Judged, Judgment } from '../../src/judge/judge.ts'
import { differenceText, heavyText, outcome } from '../../src/judge/say.ts'
import { inch } from '../replay/shop.ts'

const size = (more: Partial<Judged>): Judged => ({
  id: 'width',
  aim: inch(0.25),
  limits: null,
  surely: inch(0.25),
  possibly: inch(0.25),
  verdict: 'holds',
  by: 0,
  maybe: false,
  side: null,
  ...more,
})
const judgment = (more: Partial<Judgment>): Judgment => ({
  proven: false,
  saved: true,
  sizes: [],
  faults: [],
  gone: 0,
  beside: [],
  left: 0,
  leftAlways: true,
  ...more,
})
const told = (more: Partial<Judgment>) => outcome(judgment(more), 'inch')
const sized = (more: Partial<Judged>) => told({ sizes: [size(more)] })

it('a difference is told to a tenth of a thousandth of an inch, or to a micrometer', () => {
  expect(differenceText('depth', inch(0.01234), 'inch')).toBe('.0123')
  expect(differenceText('depth', 12_400_000, 'mm')).toBe('0.012')
})

describe('what the part would be', () => {
  it('is nothing to tell where all holds', () => expect(sized({})).toEqual([]))
  it('tells how much is gone or left, where, and whether it can be saved', () => {
    expect(sized({ verdict: 'gone', by: inch(0.0042), side: 'headstock' })).toEqual([
      '.0042 too wide on the headstock side, cannot be saved',
    ])
    expect(sized({ verdict: 'left', by: inch(0.003), maybe: true })).toEqual([
      'with some backlash .003 left in the width, can be saved',
    ])
    expect(sized({ id: 'angle', verdict: 'off', by: 0.25 })).toEqual(['0.25° off the angle'])
    expect(sized({ id: 'flatness', verdict: 'left', by: inch(0.002) })).toEqual([
      'a step of .002 more than allowed is left on the floor, can be saved',
    ])
  })
  it('tells nothing of a place that no size has to do with', () => {
    expect(sized({ verdict: 'left', by: 0 })).toEqual([])
  })
  it('tells what is not cut at all from what some backlash leaves uncut', () => {
    expect(sized({ verdict: 'left', surely: null, possibly: null })).toEqual(['nothing is cut there yet, can be saved'])
    expect(sized({ verdict: 'left', surely: null })).toEqual(['nothing is surely cut there, can be saved'])
    expect(sized({ verdict: 'left', possibly: null })).toEqual(['nothing is surely cut there, can be saved'])
  })
  it('tells the same thing once', () => {
    const one = size({ verdict: 'left', surely: null, possibly: null })
    expect(told({ sizes: [one, { ...one, id: 'depth' }] })).toHaveLength(1)
  })
  it('tells of the form as a whole what no size tells', () => {
    const gone = told({ gone: inch(0.002) })
    expect(gone).toHaveLength(1)
    expect(gone[0]).toContain('.002')
    // A size tells it, or the part beside does: then not twice.
    expect(told({ gone: inch(0.002), sizes: [size({ verdict: 'gone', by: inch(0.002) })] })).toHaveLength(1)
    const beside = { side: 'tailstock', along: inch(0.01), deep: inch(0.05), maybe: true } as const
    expect(told({ gone: inch(0.002), beside: [beside] })).toEqual([
      'with some backlash metal is gone from the part beside it on the tailstock side, .010 along and .050 deep, cannot be saved',
    ])
    expect(told({ left: inch(0.004) })).toEqual(['metal is left, .004 more than the limits allow, can be saved'])
    expect(told({ left: inch(0.004), leftAlways: false })).toEqual([
      'with some backlash metal is left, .004 more than the limits allow, can be saved',
    ])
  })
})

describe('a small difference', () => {
  it('is never told as nothing', () => {
    expect([0.25, 0.004, 0.0004, 0.00004].map((by) => differenceText('angle', by, 'inch'))).toEqual([
      '0.25°',
      '0.004°',
      '0.0004°',
      '0.00004°',
    ])
    expect(differenceText('angle', 0.000004, 'inch')).toBe('0.000004°')
    expect(differenceText('width', inch(0.0005), 'inch')).toBe('.0005')
    expect(differenceText('width', inch(0.01), 'inch')).toBe('.010')
    expect(differenceText('width', inch(0.00003), 'inch')).toBe('.00003')
  })
})

describe('a heavy cut', () => {
  const heavy = { move: 0, takes: inch(0.04), most: inch(0.03) }
  it('is told by what sets its limit', () => {
    expect(heavyText({ ...heavy, of: 'infeed', across: false }, 'inch')).toBe(
      'heavier than infeed .030: takes .040 at once',
    )
    expect(heavyText({ ...heavy, of: 'sheet', across: false }, 'inch')).toBe(
      'heavier than any pass of the sheet, .030: takes .040 at once',
    )
    expect(heavyText({ ...heavy, of: 'sheet', across: true }, 'inch')).toBe(
      'feeds across through metal .040 high, where .030 is the most to feed into',
    )
  })
})

describe('the difference of two sizes', () => {
  it('leaves out one zero at its end, no more', () => {
    expect(differenceText('width', inch(0.012), 'inch')).toBe('.012')
    expect(differenceText('width', inch(0.01), 'inch')).toBe('.010')
    expect(differenceText('width', inch(0.0125), 'inch')).toBe('.0125')
  })
})
