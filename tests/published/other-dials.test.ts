import { describe, expect, it } from 'vitest'
import glands from './gland-radii.json' with { type: 'json' }
import rings from './retaining-rings.json' with { type: 'json' }
import { cuts, INCH_LATHE, judged, METRIC_LATHE, planned, within } from './whole-job.ts'

// Metric tables cut on inch dials and the other way round: the limits of the table stay what they are, the readings are those of the dial.

const CARRIAGE = METRIC_LATHE.replace('spindle-speeds', 'carriage: { indicator: 0.01, range: 10 }\n  spindle-speeds')
const INCH_CARRIAGE = INCH_LATHE.replace(
  'spindle-speeds',
  'carriage: { indicator: 0.001, range: 0.5 }\n  spindle-speeds',
)

describe('metric grooves on inch dials', () => {
  it.each(rings.din471)('DIN 471, shaft $shaft: groove $groove, $lower; $width wide, H13 ($source)', (row) => {
    const { sheet, size } = planned({
      units: 'mm',
      part: `diameter: ${row.shaft}, length: 60`,
      tool: `shape: square, width: ${row.width}, reach: ${((row.shaft - row.groove) / 2 + 1).toFixed(2)}`,
      feature: `kind: groove, near: 10, width: ${row.width} H13, bottom-diameter: ${row.groove} +0 ${row.lower}`,
      lathe: INCH_LATHE,
    })
    judged(size('bottomDiameter'), row.groove + row.lower, row.groove)
    // H13 of a size up to 3 mm is 0.140, over that 0.180 (ISO 286-1).
    judged(size('width'), row.width, row.width + (row.width > 3 ? 0.18 : 0.14))
    const deepest = Math.max(...cuts(sheet).map(({ crossFeed }) => crossFeed))
    expect(Math.abs(deepest * 1000 - Math.round(deepest * 1000))).toBeLessThan(1e-6)
    within(row.shaft - 2 * deepest * 25.4, row.groove + row.lower, row.groove)
  })
})

describe('inch glands on metric dials, and by the carriage', () => {
  const rows = glands.glands.filter(({ radius, id }) => radius[0]! > 0 && id.startsWith('gland_'))
  const middle = ([low, high]: number[]): number => (low! + high!) / 2

  it('has the rows', () => {
    expect(rows.length).toBe(30)
  })

  const job = (row: (typeof rows)[number], lathe: string, more = '') =>
    planned({
      units: 'inch',
      part: 'diameter: 2, length: 2.5',
      tool: `shape: square, width: ${(row.width[0]! * 0.7).toFixed(3)}, corner-radius: ${middle(row.radius).toFixed(4)}, reach: ${(row.depth[1]! + 0.05).toFixed(3)}`,
      feature: `kind: groove, near: 0.5, width: ${row.width.join(' to ')}, depth: ${row.depth.join(' to ')}, corner-radius: ${row.radius.join(' to ')}${more}`,
      lathe,
    })

  it.each(rows)('$use $section, $backUps back-ups, metric dials ($source)', (row) => {
    const { sheet, size } = job(row, METRIC_LATHE)
    judged(size('width'), row.width[0]!, row.width[1]!)
    judged(size('depth'), row.depth[0]!, row.depth[1]!)
    judged(size('cornerRadius'), row.radius[0]!, row.radius[1]!)
    const deepest = Math.max(...cuts(sheet).map(({ crossFeed }) => crossFeed))
    within(deepest / 2 / 25.4, row.depth[0]!, row.depth[1]!)
  })

  it.each(rows)('$use $section, $backUps back-ups, by an indicator on the carriage ($source)', (row) => {
    for (const lathe of [CARRIAGE, INCH_CARRIAGE]) {
      const { sheet, size } = job(row, lathe, ', side-feed: carriage')
      judged(size('width'), row.width[0]!, row.width[1]!)
      judged(size('depth'), row.depth[0]!, row.depth[1]!)
      judged(size('cornerRadius'), row.radius[0]!, row.radius[1]!)
      expect(sheet.steps.some(({ slide }) => slide === 'carriage')).toBe(true)
    }
  })
})
