import { describe, expect, it } from 'vitest'
import rows from './compound-settings.json' with { type: 'json' }
import { cuts, deepestByDial, INCH_LATHE, type Job, planned, radians, sheetOf, within } from './whole-job.ts'

it('has the rows', () => {
  expect(Object.fromEntries(Object.entries(rows).map(([name, list]) => [name, list.length]))).toEqual({
    overWires: 10,
    perPitch: 1,
    perPitchRecomputed: 1,
    iso68: 1,
    fromSquare: 1,
    includedFromSquare: 1,
    fromWays: 1,
    tenths: 3,
    recomputed: 14,
    constants: 3,
  })
})

/** Readouts to a ten-thousandth, so that what a dial's mark hides does not hide a wrong formula. */
const FINE = `{ name: Measuring lathe, units: inch, cross-feed: { readout: 0.0001, reads: depth }, compound: { readout: 0.0001, travel: 3 }, spindle-speeds: [4, 95, 950] }`

type Thread = (typeof rows.overWires)[number]

const overWires = (row: Thread, method: string, form: string, nose: number) => {
  const job: Job = {
    units: 'inch',
    part: `diameter: ${row.diameter}, length: 3`,
    tool: `shape: vee, angle: 60, nose: ${nose.toFixed(5)}, reach: 0.25`,
    feature: `kind: v-groove, method: ${method}, angle: 60, ${form}, near: 0.75`,
    lathe: FINE,
  }
  const { sheet, feature } = planned(job, { again: false })
  const over = feature.inspection.find(({ id }) => id === 'overPins')!
  return { sheet, feature, over: over.planned + 3 * (row.wire - over.pin!) }
}

/** The tables below are for a compound at half the angle itself. */
const exact = (method: string): string => (method === 'flank-feed' ? 'flank-feed, flank-under: 0' : method)

// Threads of 60° are cut with the compound 29 1/2° from square, and finished straight in (US Navy training manual 14345).
it("a V of 60° by flank feed is set to 29° 30' from square", () => {
  expect(
    swivel(
      'square',
      'kind: v-groove, method: flank-feed, angle: 60, depth: 0.1, root: 0.02, near: 1',
      'shape: vee, angle: 60, nose: 0.02, reach: 0.4',
    ),
  ).toBe("29° 30'")
})

// One ring of the thread, cut as a groove; what the sheet expects over its pins, told for the wires of the table: three wires for each of the sheet's.
describe.each(['plunge', 'flank-feed'])('threads over wires as grooves, by %s', (method) => {
  // American National form: 7/8 of the pitch at the surface, an eighth at the root.
  it.each(rows.overWires)('$diameter-$threadsPerInch, $wire wires: $overUs over them ($source)', (row) => {
    const pitch = 1 / row.threadsPerInch
    const form = `width: ${((7 / 8) * pitch).toFixed(6)}, root: ${(pitch / 8).toFixed(6)}`
    const { over, sheet, feature } = overWires(row, exact(method), form, 0.9 * (pitch / 8))
    within(over, row.overUs - 0.0004, row.overUs + 0.0004)
    if (method === 'flank-feed') {
      expect(feature.compoundAngle).toBe(60)
      // 3/4 of the pitch by the compound, 30° from square: a course's rule for the whole infeed, and recomputed.
      const straight = cuts(sheet).filter(({ crossFeed }) => crossFeed === 0)
      const travel = Math.max(...straight.map(({ compound }) => compound))
      within(travel / pitch, rows.perPitchRecomputed[0]!.pitches - 0.0002 / pitch, 0.75 + 0.0002 / pitch)
      if (row.threadsPerInch === rows.perPitch[0]!.threadsPerInch) within(travel, 0.0375 - 0.0002, 0.0375 + 0.0002)
    }
  })

  it.each(rows.overWires)('sharp V $diameter-$threadsPerInch, $wire wires: $overV over them ($source)', (row) => {
    const { over } = overWires(row, exact(method), `width: ${(1 / row.threadsPerInch).toFixed(6)}`, 0.002)
    within(over, row.overV - 0.0004, row.overV + 0.0004)
  })
})

// 0.866025 P: how far under the surface the flanks of a sharp V meet, from what is expected over pins.
describe('heights of sharp V threads', () => {
  it.each(rows.constants)('$threadsPerInch to the inch: $height ($source)', ({ threadsPerInch, height }) => {
    const row = { ...rows.overWires[0]!, diameter: 1, threadsPerInch, wire: 0 }
    const { over } = overWires(row, exact('flank-feed'), `width: ${(1 / threadsPerInch).toFixed(6)}`, 0.002)
    within((1 - over) / 2, height - 0.0002, height + 0.0002)
  })
})

describe('external ISO thread of pitch 1', () => {
  // 5H/8 deep; fed down one flank by that over the cosine of 30°.
  it.each(rows.iso68)('is $external deep of $sharp ($source)', ({ external, sharp }) => {
    const lathe =
      '{ name: Measuring lathe, units: mm, cross-feed: { readout: 0.001, reads: depth }, compound: { readout: 0.001, travel: 30 }, spindle-speeds: [95] }'
    const { sheet, size } = planned({
      units: 'mm',
      part: 'diameter: 6, length: 30',
      tool: 'shape: vee, angle: 60, nose: 0.25, reach: 2',
      feature: 'kind: v-groove, method: flank-feed, flank-under: 0, angle: 60, width: 0.875, root: 0.25, near: 8',
      lathe,
    })
    within(size('depth').planned, external - 0.001, external + 0.001)
    // The flanks, 7/8 of the pitch apart at the surface, meet 7/8 of H below it.
    within((size('depth').planned * 0.875) / (0.875 - 0.25), (7 / 8) * sharp - 0.002, (7 / 8) * sharp + 0.002)
    const travel = Math.max(...cuts(sheet).map(({ compound }) => compound))
    within(travel * Math.cos(radians(30)), external - 0.001, external + 0.001)
  })
})

const lathe = (zero: string) => `
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 3, scale-zero: ${zero} }
  spindle-speeds: [20, 95, 150, 950]`

const swivel = (zero: string, feature: string, tool: string): string => {
  const sheet = sheetOf({ units: 'inch', part: 'diameter: 2, length: 3', tool, feature, lathe: lathe(zero) })
  return /set to (\S+( \d+')?) on its swivel/.exec(sheet.steps.find(({ action }) => action === 'swing')!.say)![1]!
}

describe('what is set on the swivel', () => {
  const square = 'shape: square, width: 0.1, reach: 0.2'
  const v = (angle: number) => `shape: vee, angle: ${angle}, nose: 0.02, reach: 0.4`
  const flank = (angle: number) =>
    `kind: v-groove, method: flank-feed, flank-under: 0, angle: ${angle}, depth: 0.1, root: 0.02, near: 1`

  it.each(rows.fromSquare)('$toAxis° to the axis on a scale marked from square: $set° ($source)', (row) => {
    const feature = `kind: groove, width: 0.15, depth: 0.05, near: 1, compound: { angle: ${row.toAxis} }`
    expect(swivel('square', feature, square)).toBe(`${row.set}°`)
    expect(swivel('parallel', feature, square)).toBe(`${row.toAxis}°`)
  })

  it.each(rows.includedFromSquare)('$included° included on a scale marked from square: $set° ($source)', (row) => {
    expect(swivel('square', flank(row.included), v(row.included))).toBe(`${row.set}°`)
  })

  // A center of 60° and a V whose flanks stand 30° to the axis are set alike.
  it.each(rows.fromWays)(
    'a face of $included° included, half of it to the axis: $set° from the ways ($source)',
    (row) => {
      const angle = 180 - row.included
      expect(swivel('parallel', flank(angle), v(angle))).toBe(`${row.set}°`)
    },
  )

  it.each(rows.tenths.filter(({ id }) => id === 'cr_8416'))(
    'the tenth-reading angle is 84° 16 from square ($source)',
    () => {
      const feature = "kind: groove, width: 0.1, depth: 0.05, near: 1, compound: { angle: 5° 44' }"
      expect(swivel('square', feature, square)).toBe("84° 16'")
    },
  )
})

describe('the compound as a fine dial', () => {
  // A mark of it is taken for a tenth at 5.75° and at 6° (a lathework note): one twentieth off at 6°, as the sine says.
  it.each(rows.tenths)('at $degrees° ten marks come to about one in depth ($source)', ({ degrees, ratio }) => {
    for (let tenth = 0; tenth < 10; tenth++) {
      const depth = 0.02 + tenth / 10000
      const { sheet, size } = planned({
        units: 'inch',
        part: 'diameter: 0.5, length: 2',
        tool: 'shape: square, width: 0.04, reach: 0.1',
        feature: `kind: groove, width: 0.04, depth: ${depth.toFixed(4)}, near: 0.5, compound: { angle: ${degrees.toFixed(5)} }`,
      })
      const touch = sheet.steps.findIndex(({ action }) => action === 'touch-off')
      const before = sheet.steps.slice(0, touch).filter(({ slide }) => slide === 'compound')
      const short = -(before.at(-1)!.reading ?? 0)
      const deepest = Math.max(...cuts(sheet).map(({ crossFeed }) => crossFeed))
      within(size('depth').planned, depth - 0.0001, depth + 0.0001)
      within(size('depth').planned, deepest + (short / ratio) * 0.95, deepest + (short / ratio) * 1.05)
    }
  })
})

// Six decimals of sine and cosine, recomputed, not read; the setting itself is from the textbook above.
describe('a groove wider than its tool with the compound swung', () => {
  it.each(rows.recomputed.filter(({ fromWays }) => fromWays >= 10))(
    'at $fromWays°: $radial into the work, $axial along it for each 1.000 ($source)',
    (row) => {
      const { sheet } = planned({
        units: 'inch',
        part: 'diameter: 2, length: 3',
        tool: 'shape: square, width: 0.125, reach: 0.3',
        feature: `kind: groove, width: 0.2, depth: 0.1, near: 1, compound: { angle: ${row.fromWays} }`,
        lathe: INCH_LATHE,
      })
      const places = cuts(sheet)
      const furthest = Math.max(...places.map(({ compound }) => compound))
      within(furthest * row.axial, 0.075 - 0.0006, 0.075 + 0.0006)
      for (const place of [0, furthest]) {
        const deep = places.filter(({ compound }) => compound === place)
        const deepest = Math.max(...deep.map(({ crossFeed, compound }) => crossFeed + compound * row.radial))
        within(deepest, 0.0995 - 0.0001, 0.1005 + 0.0001)
      }
      within(deepestByDial(sheet, row.fromWays, 'depth'), 0.0995 - 0.0001, 0.1005 + 0.0001)
    },
  )
})
