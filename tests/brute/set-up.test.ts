import { describe, expect, it } from 'vitest'
import { bruteForce } from './brute-force.ts'
import {
  changed,
  cornerSheet,
  RISEN,
  RISEN_AT_FACE,
  squareSheet,
  veeSheet,
  withFeature,
  without,
} from './hand-sheets.ts'
import type { Placing, Sheet, SheetStep } from './sheet-shape.ts'

const said = (sheet: Sheet): string => bruteForce(sheet).problems.join('\n')

/** Steps put in before another, renumbered; turns and marks belong to the hundred-mark dials of the hand sheets. */
function inserted(sheet: Sheet, before: number, steps: [string, SheetStep['slide'], number | null][]): Sheet {
  const made = steps.map(([action, slide, reading]) => ({ number: 0, feature: 0, action, slide, reading }) as SheetStep)
  const all = [...sheet.steps.slice(0, before - 1), ...made, ...sheet.steps.slice(before - 1)]
  return changed({ ...sheet, steps: all.map((step, at) => ({ ...step, number: at + 1 })) }, () => null)
}

const placed = (sheet: Sheet, point: Placing['point'], against: Placing['against']): Sheet =>
  withFeature(sheet, { placing: { point, against } })

/** A bar of 1.25 with a collar of 1.5 from 2.000 on: a neck against its face, the .125 tool at its zero beside it. */
function neckSheet(): Sheet {
  const sheet = squareSheet()
  sheet.part.steps = [
    { name: 'bar', diameter: 1.25, from: 0, to: 2 },
    { name: 'collar', diameter: 1.5, from: 2, to: 3 },
  ]
  const steps = changed(sheet, ({ number, action, slide, reading }) => {
    if (number === 10 || action === 'back-out') return { reading: slide === 'cross-feed' ? -0.155 : reading! }
    if (slide === 'compound' && typeof reading === 'number' && reading >= 0 && action !== 'zero')
      return { reading: reading - 0.075 }
    return action === 'go-past' ? { reading: -0.095 } : null
  })
  const first = inserted(steps, 11, [
    ['go-past', 'compound', -0.095],
    ['return', 'compound', -0.075],
  ])
  return withFeature(first, {
    edge: { ...sheet.features[0]!.edge!, reach: 0.3 },
    placing: { point: 'headstock-corner', against: { face: 2 } },
    lines: [],
    zero: { fromEnd: 1.875, diameter: 1.25 },
  })
}

describe('the zeros, from what the hand brings where and what the edge meets', () => {
  it('are those worked out by hand', () => {
    for (const sheet of [squareSheet(), veeSheet(), cornerSheet(), neckSheet()]) expect(said(sheet)).toBe('')
  })

  it('may come from the other corner, midway between lines, and an end of the part for a line', () => {
    const far = placed(squareSheet(), 'headstock-corner', { line: 0.925 })
    expect(said(withFeature(far, { lines: [0.925] }))).toBe('')
    const middle = placed(squareSheet(), 'tip', { between: [0.8, 0.925] })
    expect(said(withFeature(middle, { lines: [0.8, 0.925] }))).toBe('')
    const ended = squareSheet()
    ended.part.steps = [
      { name: 'one', diameter: 1.25, from: 0, to: 0.8 },
      { name: 'two', diameter: 1.25, from: 0.8, to: 3 },
    ]
    expect(said(withFeature(ended, { lines: [] }))).toBe('')
  })

  it('differ where the wrong corner is named', () => {
    const wrong = said(placed(squareSheet(), 'headstock-corner', { line: 0.8 }))
    expect(wrong).toContain('zero stands at 0.6750000 along the work, told is 0.8')
  })

  it('differ for the corner of the ground edge where that of the nose is meant', () => {
    // The flanks run .300 tan 30° = .1732051 to either side of the nose.
    const wrong = said(placed(veeSheet(), 'tailstock-corner', { line: 1 }))
    expect(wrong).toContain('zero stands at 1.1732051 along the work')
  })

  it('differ where they are told a little off, and are replayed from where they are', () => {
    const off = withFeature(squareSheet(), { zero: { fromEnd: 0.801, diameter: 1.25 } })
    expect(said(off)).toContain('told is 0.801')
    expect(bruteForce(off).features[0]!.runs[0]!.first).toBe(bruteForce(squareSheet()).features[0]!.runs[0]!.first)
    const deep = withFeature(squareSheet(), { zero: { fromEnd: 0.8, diameter: 1.24999 } })
    expect(said(deep)).toContain('zero stands at a diameter of 1.2500000, told is 1.24999')
  })

  it('need a line that somebody scribed', () => {
    expect(said(withFeature(squareSheet(), { lines: [0.9] }))).toContain('a line at 0.8 that nobody scribed')
    const middle = placed(squareSheet(), 'tip', { between: [0.8, 0.925] })
    expect(said(middle)).toContain('a line at 0.925 that nobody scribed')
  })

  it('need a face, and the corner that can touch it', () => {
    expect(said(placed(neckSheet(), 'headstock-corner', { face: 1.9 }))).toContain('no face at 1.9')
    expect(said(placed(neckSheet(), 'tailstock-corner', { face: 2 }))).toContain('that the tailstock-corner can touch')
    expect(said(placed(neckSheet(), 'headstock-corner', { beside: 2, gap: 0.01 }))).toContain('no place along the work')
  })

  it('need to be aligned and touched at all', () => {
    expect(said(without(squareSheet(), ({ action }) => action === 'align'))).toContain('no place along the work')
    expect(said(without(squareSheet(), ({ action }) => action === 'touch-off'))).toContain('no depth was found')
  })
})

describe('the touch of the cross-feed', () => {
  it('is found out when it meets another diameter than told', () => {
    const wrong = withFeature(squareSheet(), { touch: { diameter: 1.2501, at: null } })
    expect(said(wrong)).toContain('touches a diameter of 1.250000, told is 1.2501')
  })

  it('meets the larger step where the edge hangs over it', () => {
    const over = placed(neckSheet(), 'headstock-corner', { line: 2.01 })
    expect(said(withFeature(over, { lines: [2.01] }))).toContain('touches a diameter of 1.500000, told is 1.25')
  })

  it('meets nothing beyond the end of the work', () => {
    const off = placed(squareSheet(), 'headstock-corner', { line: -0.1 })
    expect(said(withFeature(off, { lines: [-0.1] }))).toContain('where there is no metal')
  })

  it('is brought to its own place first, and the same everywhere over it', () => {
    const over = (from: number, to: number): Sheet => {
      const sheet = neckSheet()
      const touch = sheet.steps.filter(({ number }) => number === 8 || number === 9)
      const rest = sheet.steps.filter(({ number }) => number !== 8 && number !== 9)
      const steps = [...rest.slice(0, 3), ...touch, ...rest.slice(3)].map((step, at) => ({ ...step, number: at + 1 }))
      const touched = inserted({ ...sheet, steps }, 6, [['back-out', 'cross-feed', -0.155]])
      return withFeature(touched, { touch: { diameter: 1.25, at: { point: 'tip', against: { over: [from, to] } } } })
    }
    expect(said(over(1, 1.5))).toBe('')
    expect(said(over(1, 1.95))).toContain('the touch is not the same everywhere')
  })
})

describe('a slide moved after its touch', () => {
  it('is found out when the compound is taken up after the tool was aligned', () => {
    const { steps, ...rest } = squareSheet()
    const swapped = [steps[0]!, steps[1]!, steps[3]!, steps[2]!, ...steps.slice(4)]
    const late = { ...rest, steps: swapped.map((step, at) => ({ ...step, number: at + 1 })) }
    // Turned on by .011 of the dial: the tool stands so much further than the line.
    expect(said(late)).toContain('zero stands at 0.8110000 along the work')
  })

  it('is found out when a compound for fine depths was short of 0 at the touch', () => {
    const [sine, cosine] = [Math.sin((5.7333 * Math.PI) / 180), Math.cos((5.7333 * Math.PI) / 180)]
    const plunge = (back: number): Sheet => {
      const sheet = without(squareSheet(), ({ number }) => number > 12 && number < 23)
      const swung = withFeature(sheet, { compoundAngle: 5.7333 })
      const moved = inserted(swung, 8, [
        ['go-past', 'compound', -0.04],
        ['return', 'compound', back],
      ])
      const at = moved.steps.findIndex(({ action }) => action === 'feed-in') + 1
      return inserted(moved, at, [['shift', 'compound', 0]])
    }
    expect(said(plunge(0))).toBe('')
    // Ten marks of the compound further forward are .010 sin 5° 44' = .001 deeper, .002 on the diameter.
    const told = said(plunge(-0.01))
    expect(told).toContain(`zero stands at a diameter of ${(1.25 - 0.02 * sine).toFixed(7)}, told is 1.25`)
    expect(0.01 * cosine).toBeCloseTo(0.00995, 5)
  })

  it('is found out when a swung compound is fed to the face after the cross-feed was set to zero', () => {
    const told = said(withFeature(cornerSheet(), { compoundAngle: 10 }))
    expect(told).toContain('a swung compound fed to a face after the cross-feed was set to zero')
    expect(told).toContain('told is')
  })
})

describe('the touch of the compound', () => {
  it('of a hollow corner tool is where its curve reaches the edge of the metal', () => {
    const tip = withFeature(cornerSheet(), { zero: { fromEnd: 0, diameter: 1.25 + 2 * RISEN } })
    expect(said(tip)).toContain(`zero stands at ${(-RISEN_AT_FACE).toFixed(7)} along the work, told is 0`)
  })

  it('of a square tool is its corner', () => {
    const edge = { ...squareSheet().features[0]!.edge! }
    const square = withFeature(cornerSheet(), {
      ...{ edge, placing: { point: 'headstock-corner', against: { beside: 0, gap: 0.02 } } },
      ...{ touch: { diameter: 1.25, at: { point: 'tip', against: { over: [0.2, 0.4] } } } },
      zero: { fromEnd: -0.125, diameter: 1.25 },
    })
    const held = changed(square, ({ number }) => (number === 7 ? { reading: 0.01 } : null))
    expect(said(held)).not.toContain('told is')
    expect(said(square)).toContain('meets no face')
  })

  it('needs the cross-feed touched first, and a face that is ahead', () => {
    const first = without(cornerSheet(), ({ number }) => number === 2)
    expect(said(first)).toContain('at a depth that nobody knows yet')
    const beyond = placed(cornerSheet(), 'tailstock-corner', { beside: 0, gap: -0.02 })
    expect(said(beyond)).toContain('meets no face')
  })
})
