import { describe, expect, it } from 'vitest'
import grades from './iso286.json' with { type: 'json' }
import rows from './undercuts.json' with { type: 'json' }
import { deepestByDial, type Job, judged, planned, refused, within } from './whole-job.ts'

/** Standard tolerance of a size in millimeters, from the published table. */
const grade = (number: number, size: number): number =>
  grades.grades.find((row) => row.grade === number && size > row.over && size <= row.to)!.micrometers / 1000

const thread = (row: (typeof rows.thread)[number] | (typeof rows.spots)[number], bar: number, tool: string): Job => ({
  units: 'mm',
  part: `diameter: ${bar}, length: ${Math.max(20, 3 * bar)}`,
  tool: `shape: square, ${tool}, reach: ${row.less / 2 + 1}`,
  feature: `kind: groove, near: 6, width: ${row.shortest} to ${row.longest}, bottom-diameter: ${Number((bar - row.less).toFixed(3))} ${bar > 3 ? 'h13' : 'h12'}, corner-radius: ${row.radius}`,
})

it('has the rows', () => {
  expect([rows.thread.length, rows.spots.length, rows.din509.length, rows.dgClasses.length]).toEqual([23, 2, 18, 1])
  expect(rows.dgClasses[0]).toMatchObject({ over3: 'h13', to3: 'h12' })
})

/** Limits of the undercut's diameter: the class of the row above, h13 of a thread over 3 mm, h12 of one up to that. */
const bottom = (less: number, bar: number): [number, number] => {
  const nominal = bar - less
  return [nominal - grade(bar > 3 ? 13 : 12, nominal), nominal]
}

// The rows say "r about": a tenth of it, and a graduation of the compound, are taken for that here.
const about = (radius: number): [number, number] => [radius * 0.9 - 0.01, radius * 1.1 + 0.01]

describe('thread undercuts of ISO 4755', () => {
  it.each(rows.thread)('P $pitch: d - $less, $shortest to $longest, r $radius by the tool ($source)', (row) => {
    const tool = `width: ${(2 * row.radius + 0.8 * (row.shortest - 2 * row.radius) + 0.001).toFixed(3)}, corner-radius: ${row.radius}`
    const { sheet, size } = planned(thread(row, row.thread, tool))
    const limits = bottom(row.less, row.thread)
    judged(size('width'), row.shortest, row.longest)
    judged(size('bottomDiameter'), ...limits)
    within(row.thread - 2 * deepestByDial(sheet, 0, 'diameter'), ...limits)
    within(size('cornerRadius').planned, ...about(row.radius))
  })

  it.each(rows.thread.filter((row) => row.radius >= 0.6))(
    'P $pitch: d - $less, $shortest to $longest, r $radius stepped along with sharp corners ($source)',
    (row) => {
      const flat = (row.shortest + row.longest) / 2 - 2 * row.radius
      const { sheet, size } = planned(thread(row, row.thread, `width: ${(0.8 * flat).toFixed(2)}`))
      const limits = bottom(row.less, row.thread)
      judged(size('width'), row.shortest, row.longest)
      judged(size('bottomDiameter'), ...limits)
      within(row.thread - 2 * deepestByDial(sheet, 0, 'diameter'), ...limits)
      within(size('cornerRadius').planned, ...about(row.radius))
    },
  )

  it.each(rows.spots)('agrees with a second transcription at P $pitch ($source)', (spot) => {
    const row = rows.thread.find(({ pitch }) => pitch === spot.pitch)!
    const { less, shortest, longest, radius } = row
    expect({ less, shortest, longest, radius }).toEqual({
      less: spot.less,
      shortest: spot.shortest,
      longest: spot.longest,
      radius: spot.radius,
    })
    const { size } = planned(thread(spot, row.thread, `width: ${2 * radius + 0.2}, corner-radius: ${radius}`))
    judged(size('bottomDiameter'), ...bottom(spot.less, row.thread))
    judged(size('width'), spot.shortest, spot.longest)
  })
})

// Form E runs out of its radius into the shoulder above it: as a groove between two fillets it would be shallower than they are.
describe('undercuts of DIN 509, form E', () => {
  const [limits] = rows.din509Limits
  const job = (row: (typeof rows.din509)[number], corner: string): Job => ({
    units: 'mm',
    part: `steps: [{ name: seat, diameter: ${row.shaft}, length: 20 }, { name: body, diameter: ${row.shaft + 4}, length: 30 }]`,
    tool: `shape: square, width: ${(row.width * 0.8).toFixed(2)}, reach: 4`,
    feature: `kind: groove, from: body, far: 0, width: ${row.width} +${limits!.width} -0, depth: ${row.depth} +${limits!.depth} -0${corner}`,
  })

  it.each(rows.din509)(
    'E $radius x $depth, $width wide: floor and width on $shaft against a shoulder ($source)',
    (row) => {
      const { sheet, size } = planned(job(row, ''))
      judged(size('width'), row.width, row.width + limits!.width)
      judged(size('depth'), row.depth, row.depth + limits!.depth)
      within(deepestByDial(sheet, 0, 'diameter'), row.depth, row.depth + limits!.depth)
    },
  )

  it.each(rows.din509.filter((row) => row.radius - limits!.radius > row.depth + limits!.depth))(
    'E $radius x $depth is no groove between two fillets ($source)',
    (row) => {
      expect(refused(job(row, `, corner-radius: ${row.radius} ±${limits!.radius}`)).code).toBe('no-solution')
    },
  )
})
