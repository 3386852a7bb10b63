import { describe, expect, it } from 'vitest'
import rows from './gland-radii.json' with { type: 'json' }
import { deepestByDial, judged, planned, within } from './whole-job.ts'

type Gland = (typeof rows.glands)[number]

const middle = ([low, high]: number[]): number => (low! + high!) / 2

const cut = (row: Gland, tool: string) =>
  planned({
    units: 'inch',
    part: 'diameter: 2, length: 2.5',
    tool: `shape: square, ${tool}, reach: ${(row.depth[1]! + 0.05).toFixed(3)}`,
    feature: `kind: groove, near: 0.5, width: ${row.width.join(' to ')}, depth: ${row.depth.join(' to ')}, corner-radius: ${row.radius[0] === 0 ? `${row.radius[1]} max` : row.radius.join(' to ')}`,
  })

const check = (row: Gland, { sheet, size }: ReturnType<typeof cut>): void => {
  judged(size('width'), row.width[0]!, row.width[1]!)
  judged(size('depth'), row.depth[0]!, row.depth[1]!)
  judged(size('cornerRadius'), row.radius[0]!, row.radius[1]!)
  within(deepestByDial(sheet, 0, 'depth'), row.depth[0]!, row.depth[1]!)
}

// Width for none, one and two back-up rings; radius at the bottom of the groove.
describe('O-ring glands with the radius at the bottom', () => {
  it('has the rows', () => {
    expect(rows.glands.length).toBe(60)
  })

  it.each(rows.glands)('$use $section, $backUps back-ups: radius $radius by the tool ($source)', (row) => {
    check(row, cut(row, `width: ${(row.width[0]! * 0.7).toFixed(3)}, corner-radius: ${middle(row.radius).toFixed(4)}`))
  })

  it.each(rows.glands.filter((row) => row.backUps === 1 && row.radius[1]! >= 0.02 && row.radius[0]! > 0))(
    '$use $section, $backUps back-ups: radius $radius stepped along with sharp corners ($source)',
    (row) => {
      check(row, cut(row, `width: ${((row.width[0]! - row.radius[1]!) * 0.6).toFixed(3)}`))
    },
  )
})
