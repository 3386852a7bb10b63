import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printJson } from '../../src/print/json/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'

const METRIC = `lathe:
  name: School lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 5, reads: diameter, backlash: 0.3 }
  compound: { graduation: 0.02, per-turn: 3, backlash: 0.14, travel: 90, scale-zero: square }
  spindle-speeds: [60, 90, 140, 210, 320]
`
const NECK = `title: Press nose
units: mm
part:
  material: brass
  held: chuck and center
  overhang: 100
  steps:
    - { name: nose, diameter: 24, length: 20, measured-diameter: 23.98 }
    - { name: body, diameter: 36, length: 90, measured-diameter: 36.03 }
${METRIC}tools: { right: { shape: square, width: 2.94, reach: 7, blank: 8, edge-offset: 5.06, rake-ground: 0 } }
features:
  - { kind: groove, name: Neck, from: body, far: 0, width: 6 ±0.1, bottom-diameter: 21 ±0.1, leave-sides: 0.1, tool: right }
`
const LINES = `title: Press spindle
units: mm
part: { material: mild steel, held: chuck, diameter: 40, length: 120, overhang: 90, measured-diameter: 39.98 }
${METRIC}tools: { p3: { shape: square, width: 2.95, reach: 6, blank: 8, rake-ground: 0 } }
features:
  - { kind: groove, name: To lines, side-feed: lines, near: 30 ±0.3, width: 5 ±0.3, depth: 2.5 ±WITHIN, tool: p3 }
`
const PULLEY = `title: Press pulley
units: mm
part: { material: mild steel, held: chuck, diameter: 60, length: 120, overhang: 90 }
${METRIC}tools: { v: { shape: vee, angle: 38, nose: 3, reach: 12, rake-ground: 0 } }
features:
  - { kind: v-groove, name: Belt, side-feed: lines, near: 30 ±0.3, angle: 38 ±1, width: 10 ±0.3, root: 5.5, tool: v }
`
const built = (job: string) =>
  sheetFor(compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: new TextEncoder().encode(job) })).plan!)
const words = (job: string): string => printText(built(job)).replace(/\s+/g, ' ')

/** A reading two marks of .02 nearer to the shoulder: the place is begun late. */
const late = <T extends Sheet['steps'][number]>(step: T): T => ({
  ...step,
  reading: step.reading! + 0.04,
  mark: step.mark! + 2,
})

describe('a width from a shoulder behind it', () => {
  it('that came out narrow begins further back', () => {
    expect(words(NECK)).toContain(
      'if the width is under 5.90: likewise, steps 28 and 29: 1 mark further back for every 0.02 or part of it past',
    )
  })

  it('is right once the finish is done again, two marks further back for .04', () => {
    const sheet: Sheet = JSON.parse(printJson(built(NECK)))
    const at = sheet.steps.findLastIndex((step) => 'metalLeft' in step)
    const { metalLeft } = sheet.steps[at] as unknown as { metalLeft: Left }
    const [from, to] = metalLeft.again
    const wide = metalLeft.sizes.find(({ measure }) => measure === 'width')!
    expect([wide.reading, wide.perReading]).toEqual([-0.02, 0.02])
    const narrow = sheet.steps.map((step) => (wide.steps.includes(step.number) ? late(step) : step))
    const away = sheet.steps.filter(({ number }) => number > to && number <= sheet.steps[at]!.number)
    const copies = [...sheet.steps.filter(({ number }) => number >= from && number <= to), ...away]
    const once = measuredBy(sheet, narrow)
    for (const { width, cell } of once) expect(Math.abs(width - 5.96)).toBeLessThanOrEqual(2 * cell)
    const again = measuredBy(sheet, [...narrow.slice(0, at + 1), ...copies, ...narrow.slice(at + 1)])
    for (const { width, cell } of again) expect(Math.abs(width - 6)).toBeLessThanOrEqual(2 * cell)
    expect(again[0]!.width - once[0]!.width).toBeGreaterThan(0.03)
  })
})

type Left = {
  again: [number, number]
  sizes: { measure: string; steps: number[]; reading: number; perReading: number }[]
}

const measuredBy = (sheet: Sheet, steps: Sheet['steps']): { width: number; cell: number }[] => {
  const numbered = steps.map(({ say: _, ...one }, i) => ({ ...one, number: i + 1 }))
  const [feature] = bruteForce({ ...sheet, steps: numbered }).features
  return feature!.runs.map(({ width }) => ({ width, cell: feature!.step }))
}

describe('metal left by a finish', () => {
  it('fed to lines is taken off by feeding to them again', () => {
    expect(words(LINES.replace('WITHIN', '0.1'))).toContain(
      'if the width is under 4.70: likewise, feeding to both lines again; over 5.30 it is scrap',
    )
  })

  // Deeper only narrows the root of a V that is as wide as its lines stand apart: the one remedy is the lines again.
  it('of a V fed to lines is taken off by the lines alone, however its depth is held', () => {
    const byWidth = words(PULLEY)
    expect(
      byWidth.match(/STILL TO CUT if the width is under 9\.70: steps (\d+) to (\d+) again, feeding to both/g),
    ).toHaveLength(1)
    expect(byWidth.match(/if the width is under/g)).toHaveLength(1)
    expect(byWidth).not.toMatch(/1 mark deeper than before/)
    const byDepth = words(
      PULLEY.replace('width: 10 ±0.3', 'width: 10 ±0.3, depth: 6.5 ±0.2').replace(', root: 5.5', ''),
    )
    expect(byDepth).toMatch(/1 mark deeper than before/)
    expect(byDepth.match(/if the width is under/g)).toHaveLength(1)
  })

  // The same V to readings: there every mark of depth does open it, by the tangent of half its angle.
  it('of a V fed to readings is taken off by going deeper', () => {
    expect(words(PULLEY.replace('side-feed: lines, ', ''))).toMatch(
      /if the width is under 9\.70: .* 1 mark deeper than before/,
    )
  })

  it('counts a part of a mark as a whole one, where that stays within the limits', () => {
    // A mark of 0.05 on the diameter; outside less bottom may be 4.80 to 5.20, and 4.98 to 5.02: there a whole mark would be too much.
    expect(words(LINES.replace('WITHIN', '0.1'))).toContain('for every 0.05 or part of it past that limit')
    expect(words(LINES.replace('WITHIN', '0.01'))).toContain('for every 0.05 past that limit')
  })
})
