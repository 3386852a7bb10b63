import { describe, expect, it } from 'vitest'
import rows from './general-tolerances.json' with { type: 'json' }
import grades from './iso286.json' with { type: 'json' }
import { deepestByDial, judged, METRIC_LATHE, planned, within } from './whole-job.ts'

it('has the rows', () => {
  expect([rows.widths.length, rows.radii.length, rows.angles.length]).toEqual([11, 12, 8])
})

describe('ISO 2768-1 on whole jobs', () => {
  // At the upper bound of each range, which belongs to it.
  it.each(rows.widths)('class $class, over $over to $to: width $to ±$plusMinus ($source)', (row) => {
    const { size } = planned({
      units: 'mm',
      part: 'diameter: 40, length: 80',
      tool: `shape: square, width: ${0.6 * row.to}, reach: 4`,
      feature: `kind: groove, near: 10, width: ${row.to} ±${row.plusMinus}, depth: 1`,
    })
    judged(size('width'), row.to - row.plusMinus, row.to + row.plusMinus)
    expect(size('width').verdict).toBe('holds')
  })

  const radiusIn = (range: string): number => (range === 'over 6' ? 8 : Number(range.split('-')[1]))

  it.each(rows.radii)('class $class, radius $range: ±$plusMinus, by a square tool ($source)', (row) => {
    const radius = radiusIn(row.range)
    const { size } = planned(
      {
        units: 'mm',
        part: 'diameter: 60, length: 60',
        tool: 'shape: square, width: 3, reach: 15',
        feature: `kind: radius, shape: corner, corner-of: end, radius: ${radius} ±${row.plusMinus}, cusp: 0.1`,
      },
      { again: false },
    )
    judged(size('radius'), radius - row.plusMinus, radius + row.plusMinus)
  })

  const degrees = (text: string): number => {
    const [, whole = '0', minutes = '0'] = /^(?:(\d+)° ?)?(?:(\d+)')?$/.exec(text)!
    return Number(whole) + Number(minutes) / 60
  }

  it.each(rows.angles)(
    'class $class, shorter side $side: 38° ±$plusMinus, and a tool that is off by more ($source)',
    (row) => {
      const job = (ground: string) =>
        planned(
          {
            units: 'mm',
            part: 'diameter: 60, length: 60',
            tool: `shape: vee, angle: ${ground}, nose: 2, reach: 12`,
            feature: `kind: v-groove, angle: 38 ±${row.plusMinus}, depth: 8, root: 3, near: 20`,
          },
          { again: false },
        )
      const off = degrees(row.plusMinus)
      judged(job('38').size('angle'), 38 - off, 38 + off)
      expect(job('38').size('angle').verdict).toBe('holds')
      expect(() => job((38 + 1.1 * off).toFixed(3))).toThrow()
    },
  )
})

// What the worst case is made of, by hand: a shaft touched off within t is cut 2t larger or smaller on the diameter; nothing else is in doubt.
/** With none of these at hand the bottom is not measured at the stop, and comes out as it is cut. */
const UNMEASURED = 'micrometer, blade-micrometer, depth-micrometer, depth-indicator, inside-caliper'

describe('the verdict on a published tolerance', () => {
  const shaft = 40
  const job = (number: number, touchOff: number) =>
    planned({
      units: 'mm',
      part: `diameter: ${shaft}, length: 60`,
      tool: 'shape: square, width: 4, reach: 6',
      feature: `kind: groove, near: 20, width: 4, bottom-diameter: 36 h${number}`,
      lathe: METRIC_LATHE.replace(
        'spindle-speeds',
        `accuracy: { reading: 0, touch-off: ${touchOff.toFixed(4)}, layout: 0, tool: 0, stock: 0, runout: 0 }\n  instruments: { missing: [${UNMEASURED}] }\n  spindle-speeds`,
      ),
    })

  it.each(grades.grades.filter(({ over, to, grade }) => over === 30 && to === 50 && grade >= 9))(
    '36 h$grade, $micrometers µm: holds as long as twice the touch is less than what is left (ISO 286-1, IT1 to IT14, grade B)',
    ({ grade, micrometers }) => {
      const low = 36 - micrometers / 1000
      const { sheet, size } = job(grade, 0)
      const cut = shaft - 2 * deepestByDial(sheet, 0, 'diameter')
      within(cut, low, 36)
      const spare = Math.min(cut - low, 36 - cut)
      judged(size('bottomDiameter'), low, 36)
      expect(size('bottomDiameter').planned).toBeCloseTo(cut, 9)
      const holds = job(grade, spare / 2 - 0.001).size('bottomDiameter')
      const fails = job(grade, spare / 2 + 0.001).size('bottomDiameter')
      expect([holds.verdict, fails.verdict]).toEqual(['holds', 'may not hold'])
      within(holds.high - holds.planned, spare - 0.0021, spare - 0.0019)
    },
  )
})
