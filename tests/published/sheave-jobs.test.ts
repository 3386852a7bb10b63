import { describe, expect, it } from 'vitest'
import rows from './sheave-jobs.json' with { type: 'json' }
import { deepestByDial, type Job, judged, METRIC_LATHE, planned, radians, within } from './whole-job.ts'

type Method = 'plunge' | 'flank-feed'
/** The compound is set half a degree under half the angle, as for threads (US Navy training manual 14345). */
const UNDER = 0.5

const half = (angle: number): number => Math.tan(radians(angle / 2))

/** Over a ball seated in the groove, from what the sheet says to expect over pins of its own: both stand on the same flanks. */
const projection = (row: { angle: number; ball: number }, outside: number, overPins: number, pin: number): number => {
  const perPin = 1 + 1 / Math.sin(radians(row.angle / 2))
  return (overPins - outside + (row.ball - pin) * perPin) / 2
}

type Groove = { angle: number; top: number; depth: number; tolerance: number; angleTolerance: number }

const sheave = (row: Groove, outside: number, method: Method): Job => {
  const root = row.top - 2 * row.depth * half(row.angle)
  return {
    units: 'inch',
    part: `diameter: ${outside}, length: 3`,
    tool: `shape: vee, angle: ${row.angle}, nose: ${(0.8 * root).toFixed(3)}, reach: ${(row.depth + 0.1).toFixed(3)}`,
    feature: `kind: v-groove, method: ${method}, angle: ${row.angle} ±${row.angleTolerance}, width: ${row.top} ±${row.tolerance}, depth: ${row.depth}, near: 0.75`,
  }
}

const checked = (row: Groove & { ball: number; projection: number }, outside: number, method: Method) => {
  // The second replay of these deep grooves takes its time: one of them is enough, the readings are worked out by hand for all.
  const { sheet, feature, size } = planned(sheave(row, outside, method), { again: row.top === 0.35 })
  const swung = method === 'flank-feed' ? 90 - row.angle / 2 + UNDER : 0
  expect(feature.compoundAngle).toBeCloseTo(swung, 9)
  within(deepestByDial(sheet, swung, 'depth'), row.depth - 0.001, row.depth + 0.001)
  judged(size('width'), row.top - row.tolerance, row.top + row.tolerance)
  judged(size('angle'), row.angle - row.angleTolerance, row.angle + row.angleTolerance)
  const over = feature.inspection.find(({ id }) => id === 'overPins')!
  const stands = projection(row, outside, over.planned, over.pin!)
  // Printed for the widest groove: at the width planned a ball stands higher by half the difference over tan.
  const narrower = row.top + row.tolerance - size('width').planned
  within(
    stands,
    row.projection + narrower / (2 * half(row.angle)) - 0.003,
    row.projection + narrower / (2 * half(row.angle)) + 0.003,
  )
  return { stands, size }
}

it('has the rows', () => {
  expect(Object.fromEntries(Object.entries(rows).map(([name, list]) => [name, list.length]))).toEqual({
    classical: 9,
    narrow: 7,
    deep: 9,
    gost: 21,
    din2211: 10,
    din2217: 4,
  })
})

describe.each(['plunge', 'flank-feed'] as const)('sheave grooves by %s', (method) => {
  it.each(rows.classical)('IP-20 $section $angle°: $ball ball $projection ($source)', (row) => {
    const { stands, size } = checked({ ...row, tolerance: row.topTolerance }, 8, method)
    // The handbook prints less for the same ball: its smallest projection is for width and angle at their limits together.
    expect(stands).toBeGreaterThan(row.projectionHandbook)
    within(size('width').planned - row.outsideLessDatum * half(row.angle), row.datum - 0.002, row.datum + 0.002)
  })

  it.each(rows.narrow)('IP-22 $section $angle°: $ball ball $projection ($source)', (row) => {
    checked({ ...row, tolerance: 0.005, angleTolerance: 0.25 }, 8, method)
  })

  it.each(rows.deep)('IP-22 deep $section $angle°: $ball ball $projection ($source)', (row) => {
    const { size } = checked({ ...row, tolerance: 0.005 }, 10, method)
    within(
      size('width').planned - row.outsideLessEffective * half(row.angle),
      row.effective - 0.003,
      row.effective + 0.003,
    )
  })
})

type Datum = { angle: number; datumDiameter: number; datum: number; above: number; depth: number }

/** A groove whose width is given at the datum diameter, below the rim, as the standards in millimeters have it. */
const atDatum = (row: Datum, method: Method) => {
  const outside = row.datumDiameter + 2 * row.above
  const root = row.datum - 2 * (row.depth - row.above) * half(row.angle)
  const { sheet, feature, size } = planned(
    {
      units: 'mm',
      part: `diameter: ${outside}, length: 120`,
      tool: `shape: vee, angle: ${row.angle}, nose: ${(0.8 * root).toFixed(2)}, reach: ${(row.depth + 3).toFixed(1)}`,
      feature: `kind: v-groove, method: ${method}, angle: ${row.angle}, width: ${row.datum}, width-at: ${row.datumDiameter}, depth: ${row.depth}, near: 45`,
      lathe: METRIC_LATHE,
    },
    { again: false },
  )
  const swung = method === 'flank-feed' ? 90 - row.angle / 2 + UNDER : 0
  expect(feature.compoundAngle).toBeCloseTo(swung, 9)
  within(deepestByDial(sheet, swung, 'diameter'), row.depth - 0.011, row.depth + 0.011)
  within(size('width').planned, row.datum - 0.04, row.datum + 0.04)
  const over = feature.inspection.find(({ id }) => id === 'overPins')!
  // Where the flanks would meet, from the pins; from there up to the rim.
  const apex = outside - over.planned + over.pin! * (1 + 1 / Math.sin(radians(row.angle / 2)))
  return { top: apex * half(row.angle), size }
}

describe.each(['plunge', 'flank-feed'] as const)('grooves given at the datum diameter, by %s', (method) => {
  it.each(rows.din2211)('DIN 2211 $section $angle°: datum width $datum, top about $top ($source)', (row) => {
    const { top } = atDatum(row, method)
    // One top width, "about", is printed for the smallest diameters, of this angle, and for 38°: it lies between the two, to half a digit.
    const steeper = 2 * row.above * (half(38) - half(row.angle))
    const digit = Number.isInteger(row.top) ? 0.5 : 0.05
    within(row.top, top - digit - 0.04, top + steeper + digit + 0.04)
  })

  it.each(rows.din2217)('DIN 2217 $section $angle°: datum width $datum, top about $top ($source)', (row) => {
    const { top } = atDatum({ ...row, datumDiameter: 200 }, method)
    within(top, row.top - 0.09, row.top + 0.09)
  })

  it.each(rows.gost)('GOST 20889 $section on $datumDiameter, $angle°: datum width $datum ($source)', (row) => {
    const { size } = atDatum({ ...row, depth: row.above + row.below }, method)
    within(
      size('bottomDiameter').planned,
      row.datumDiameter - 2 * row.below - 0.03,
      row.datumDiameter - 2 * row.below + 0.03,
    )
  })
})
