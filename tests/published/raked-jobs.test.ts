import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printJson } from '../../src/print/json/print.ts'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'

type V = { rake?: string; diameter?: number; angle?: string; tool?: string; form?: string }

/** A V of 34° in a job whose readouts hide little, replayed by the program and by the brute force. */
const replayed = ({
  rake = '',
  diameter = 1.5,
  angle = '34 ±1.5',
  tool = '34',
  form = 'depth: 3/16, root: 0.030',
}: V) => {
  const text = `
title: Idler of the cider press
units: inch
part: { material: mild steel, held: chuck, diameter: ${diameter}, length: 5, overhang: 4 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { readout: 0.0005, reads: depth }
  compound: { readout: 0.001, travel: 3 }
  spindle-speeds: [4, 20, 95, 380]
tools:
  keen: { shape: vee, angle: ${tool}, nose: 0.030, reach: 0.260${rake} }
features:
  - { kind: v-groove, name: Belt groove, angle: ${angle}, ${form}, center: 1, tool: keen }
`
  const { plan, diagnostics } = compile('job.yaml', (path) => ({ ok: true, file: path, bytes: Buffer.from(text) }))
  expect(diagnostics).toEqual([])
  const sheet = JSON.parse(printJson(sheetFor(plan!))) as Sheet
  if (sheet.features[0]!.status === 'planned') expect(bruteForce(sheet).problems).toEqual([])
  return sheet.features[0]!
}
const size = (feature: Sheet['features'][number], id: string) => feature.finished![id]!.planned

// Common practice, no source: 34° in a 14 1/2° holder, 3/16 deep on 1 1/2.
describe('a V tool ground to 34° on its face, replayed', () => {
  const holder = ', holder-angle: 14 1/2 deg'

  it('cuts 34.8° in a holder of 14 1/2°', () => {
    expect(size(replayed({ rake: holder }), 'angle')).toBeCloseTo(34.8, 1)
  })

  it('cuts 35.0° with 2° more of rake, and is .006 shallow where it is as wide as drawn', () => {
    const more = `${holder}, rake-ground: 2`
    expect(size(replayed({ rake: more }), 'angle')).toBeCloseTo(35, 1)
    const width = 0.03 + 2 * 0.1875 * Math.tan((17 * Math.PI) / 180)
    const wide = replayed({ rake: more, form: `width: ${width.toFixed(5)}, root: 0.030` })
    expect(size(wide, 'width')).toBeCloseTo(width, 3)
    expect(0.1875 - size(wide, 'depth')).toBeCloseTo(0.006, 3)
  })

  it('cuts 34° without rake in use, however the top was ground to that', () => {
    expect(size(replayed({}), 'angle')).toBeCloseTo(34, 9)
    expect(size(replayed({ rake: `${holder}, rake-ground: -14 1/2 deg` }), 'angle')).toBeCloseTo(34, 9)
    expect(replayed({ rake: `${holder}, rake-in-use: 0` }).edge!.face).toBeUndefined()
  })

  // Plane geometry: on a flat the face is longer than the depth by 1 / cos γ.
  it('comes to the cosine of the rake on a large diameter', () => {
    const flat = (2 * Math.atan(Math.tan((17 * Math.PI) / 180) / Math.cos((14.5 * Math.PI) / 180)) * 180) / Math.PI
    expect(size(replayed({ rake: holder, diameter: 2000 }), 'angle')).toBeCloseTo(flat, 3)
    expect(flat - size(replayed({ rake: holder }), 'angle')).toBeGreaterThan(0.1)
  })

  it('cuts the drawing when it is ground to what the refusal says', () => {
    const refused = replayed({ rake: holder, angle: '34' }).refusal!
    expect(refused.code).toBe('ground-on-face')
    const told = /grind (\d+)° (\d+)' on the face/.exec(refused.remedy!)!
    const corrected = replayed({ rake: holder, angle: '34', tool: `${told[1]}° ${told[2]}'` })
    expect(corrected.status).toBe('planned')
    expect(size(corrected, 'angle')).toBeCloseTo(34, 1)
    expect(size(corrected, 'width')).toBeCloseTo(0.03 + 2 * 0.1875 * Math.tan((17 * Math.PI) / 180), 3)
  })
})
