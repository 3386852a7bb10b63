import { describe, expect, it } from 'vitest'
import type { Drawn } from '../properties/drawn.ts'
import { bruteForce } from './brute-force.ts'
import { formProblems, sizeProblems } from './expected.ts'
import { changed, cornerSheet, squareSheet, veeSheet } from './hand-sheets.ts'
import type { Sheet } from './sheet-shape.ts'

const common = { name: 'By hand', nominal: 1.25, measured: 1.25, cusp: null, side: 'compound' } as const
const groove: Drawn = { ...common, kind: 'groove', near: 0.8, width: 0.2, widest: 0.2, depth: 0.06, corner: null }
const slope = Math.tan(Math.PI / 6)
const vee: Drawn = {
  ...common,
  kind: 'vee',
  near: 1,
  slope,
  width: 0.05 + 0.4 * slope,
  depth: 0.2,
  root: 0.05,
  holds: 'both',
}
const corner: Drawn = { ...common, kind: 'corner', start: 0, radius: 0.125 }

const against = (sheet: Sheet, drawn: Drawn) => formProblems(sheet, bruteForce(sheet).features[0]!, drawn)

describe('what was cut against what was drawn', () => {
  it('agrees for sheets that cut the drawing', () => {
    expect(against(squareSheet(), groove)).toEqual([])
    expect(against(veeSheet(), vee)).toEqual([])
    expect(against(cornerSheet(), corner)).toEqual([])
  })

  it('sees a groove two marks too deep, too shallow, too wide or out of place', () => {
    for (const spoiled of [
      { ...groove, depth: 0.058 },
      { ...groove, depth: 0.062 },
      { ...groove, width: 0.197 },
      { ...groove, width: 0.203 },
      { ...groove, near: 0.803 },
    ]) {
      expect(against(squareSheet(), spoiled).length).toBeGreaterThan(0)
    }
  })

  it('sees a V of another angle and a corner of another radius', () => {
    expect(against(veeSheet(), { ...vee, slope: Math.tan(Math.PI / 6.3) }).length).toBeGreaterThan(0)
    expect(against(cornerSheet(), { ...corner, radius: 0.129 }).length).toBeGreaterThan(0)
    expect(against(cornerSheet(), { ...corner, radius: 0.121 }).length).toBeGreaterThan(0)
  })

  it('sees a corner tool that stops short', () => {
    const short = changed(cornerSheet(), (step) =>
      step.action === 'feed-in' && step.reading === 0 ? { reading: -0.003 } : null,
    )
    expect(against(short, corner).length).toBeGreaterThan(0)
  })

  it('sees a promised size that was not cut', () => {
    const sheet = squareSheet()
    sheet.features[0]!.finished = { width: { planned: 0.2 }, depth: { planned: 0.06 }, near: { planned: 0.8 } }
    expect(sizeProblems(sheet, bruteForce(sheet).features[0]!)).toEqual([])
    sheet.features[0]!.finished = { width: { planned: 0.202 }, depth: { planned: 0.0606 }, near: { planned: 0.798 } }
    expect(sizeProblems(sheet, bruteForce(sheet).features[0]!)).toHaveLength(3)
  })
})
