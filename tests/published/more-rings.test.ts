import { describe, expect, it } from 'vitest'
import rows from './more-rings.json' with { type: 'json' }
import rings from './retaining-rings.json' with { type: 'json' }
import { deepestByDial, judged, planned, within } from './whole-job.ts'

it('has the rows', () => {
  expect(rows.larger.length).toBe(83)
  expect([rows.eRings.length, rows.ms16624.length, rows.margins.length, rows.ms3215.length]).toEqual([16, 3, 5, 3])
})

describe('grooves of DIN 6799 rings', () => {
  // The rows give the ring's thickness; the groove is given 0.04 to 0.12 more here (common practice, no source).
  it.each(rows.eRings)('groove $groove on shafts from $shaftFrom to $shaftTo ($source)', (row) => {
    for (const shaft of [row.shaftFrom, row.shaftTo]) {
      const { sheet, size } = planned({
        units: 'mm',
        part: `diameter: ${shaft}, length: 40`,
        tool: `shape: square, width: ${row.ring}, reach: ${(shaft - row.groove) / 2 + 1}`,
        feature: `kind: groove, near: 5, width: ${row.ring} +0.12 +0.04, bottom-diameter: ${row.groove}`,
      })
      judged(size('width'), row.ring + 0.04, row.ring + 0.12)
      within(size('bottomDiameter').planned, row.groove - 0.02, row.groove + 0.02)
      within(shaft - 2 * deepestByDial(sheet, 0, 'diameter'), row.groove - 0.02, row.groove + 0.02)
    }
  })
})

describe('the margin that DIN 471 wants between groove and end', () => {
  // The groove may stand no nearer to the end than n; the layout line is what it rests on.
  it.each(rows.margins)('shaft $shaft: at least $margin ($source)', ({ shaft, margin }) => {
    const { groove, width, lower } = rings.din471.find((row) => row.shaft === shaft)!
    const job = (accuracy: string) =>
      planned({
        units: 'mm',
        part: `diameter: ${shaft}, length: 30`,
        tool: `shape: square, width: ${width}, reach: 2`,
        feature: `kind: groove, near: ${margin} +0.4 -0, width: ${width} H13, bottom-diameter: ${groove} +0 ${lower}`,
        lathe: `{ name: Village lathe, units: mm, cross-feed: { graduation: 0.02, per-turn: 4, reads: diameter, backlash: 0.16 }, compound: { graduation: 0.01, per-turn: 2, backlash: 0.12 }, spindle-speeds: [95, 950], accuracy: { ${accuracy} } }`,
      })
    const line = job('layout: 0.1').size('near')
    judged(line, margin, margin + 0.4)
    expect(line.verdict).toBe('holds')
    expect(job('layout: 0.25').size('near').verdict).toBe('may not hold')
  })
})

describe('inch rings', () => {
  it.each(rows.ms16624)('MS16624, shaft $shaft: groove $groove, $width wide ($source)', (row) => {
    const { sheet, size } = planned({
      units: 'inch',
      part: `diameter: ${row.shaft}, length: 1`,
      tool: `shape: square, width: ${row.width}, reach: 0.05`,
      feature: `kind: groove, near: 0.25, width: ${row.width} +0.003 -0, bottom-diameter: ${row.groove}`,
    })
    judged(size('width'), row.width, row.width + 0.003)
    within(size('bottomDiameter').planned, row.groove - 0.001, row.groove + 0.001)
    within(row.shaft - 2 * deepestByDial(sheet, 0, 'depth'), row.groove - 0.001, row.groove + 0.001)
  })

  // MS3215: greatest radius at the bottom of the groove by shaft, and the width +.003 -0, on the shafts of MS16632 in that range.
  it.each(rows.ms3215)('MS3215, shafts to $to: bottom radius $bottomRadius at the most ($source)', (row) => {
    const shafts = rings.inch.filter(({ shaft }) => shaft >= row.from && shaft <= row.to)
    expect(shafts.length).toBeGreaterThan(0)
    for (const { shaft, groove, width } of shafts) {
      const job = (corner: number) => ({
        units: 'inch' as const,
        part: `diameter: ${shaft}, length: 1`,
        tool: `shape: square, width: ${width}, corner-radius: ${corner.toFixed(4)}, reach: 0.1`,
        feature: `kind: groove, near: 0.25, width: ${width} +${row.plus} -0, bottom-diameter: ${groove}, corner-radius: ${row.bottomRadius} max`,
      })
      const { size } = planned(job(0.6 * row.bottomRadius))
      judged(size('width'), width, width + row.plus)
      judged(size('cornerRadius'), 0, row.bottomRadius)
      // A tool whose corners are rounder than the standard allows must not be planned as if it were right.
      expect(() => planned(job(row.bottomRadius + 0.001))).toThrow(/corner/)
    }
  })
})

describe('DIN 471 on larger shafts', () => {
  // The rows give the groove's diameter and the ring; widths for rings of 2 mm and more are from memory, so only the diameter is held to the row.
  it.each(rows.larger)('shaft $shaft: groove $groove ($source)', ({ shaft, groove, ring, width }) => {
    const { sheet, size } = planned(
      {
        units: 'mm',
        part: `diameter: ${shaft}, length: 120`,
        tool: `shape: square, width: ${ring}, reach: ${((shaft - groove) / 2 + 1).toFixed(2)}`,
        feature: `kind: groove, near: 12, width: ${width} H13, bottom-diameter: ${groove}`,
      },
      { again: false },
    )
    within(size('bottomDiameter').planned, groove - 0.011, groove + 0.011)
    within(shaft - 2 * deepestByDial(sheet, 0, 'diameter'), groove - 0.011, groove + 0.011)
    expect(size('width').verdict).toBe('holds')
  })
})
