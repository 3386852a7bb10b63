import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { inUnits, type Units } from '../../src/units/length.ts'
import glands from './o-rings.json' with { type: 'json' }
import rings from './retaining-rings.json' with { type: 'json' }
import sheaves from './sheaves.json' with { type: 'json' }

// Rows of published tables as whole jobs: planned, proved by replay and measured; what comes out must lie inside the published limits.

const INCH_LATHE = `
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [20, 60, 95, 150, 240, 380, 600, 950]`
const METRIC_LATHE = `
  name: Village lathe
  units: mm
  cross-feed: { graduation: 0.02, per-turn: 4, reads: diameter, backlash: 0.16 }
  compound: { graduation: 0.02, per-turn: 2, backlash: 0.12, travel: 60 }
  spindle-speeds: [20, 60, 95, 150, 240, 380, 600, 950]`

type Bar = { units: Units; diameter: number; length: number; tool: string; feature: string }

/** One feature on a plain bar. Everything in the job's units. */
const planned = (bar: Bar): { size: (id: string) => number; angle: number | undefined; bottomByDial: number } => {
  const text = `title: Table row
units: ${bar.units}
part: { material: mild steel, held: chuck, diameter: ${bar.diameter}, length: ${1.5 * bar.length}, overhang: ${bar.length} }
lathe: ${bar.units === 'inch' ? INCH_LATHE : METRIC_LATHE}
tools:
  bit: { ${bar.tool} }
features:
  - { ${bar.feature}, tool: bit }
`
  const { plan, diagnostics } = compile('row.yaml', (file) => ({ ok: true, file, bytes: text }))
  if (!plan) throw new Error(diagnostics.map(({ message }) => message).join('; '))
  const feature = plan.features[0]!
  if (feature.status !== 'planned') throw new Error(`${feature.reason}; ${feature.remedy}`)
  const deepest = Math.max(
    ...feature.operation.moves.map((move) =>
      move.action === 'feed-in' && move.slide === 'cross-feed' ? move.count! : 0,
    ),
  )
  return {
    angle: feature.budget.find((size) => size.id === 'angle')?.planned,
    size: (id) => inUnits(feature.budget.find((size) => size.id === id)!.planned, bar.units),
    // One readable step is .001 in, or 0.01 mm, of slide travel on these two lathes.
    bottomByDial: bar.diameter - 2 * deepest * (bar.units === 'inch' ? 0.001 : 0.01),
  }
}

const within = (value: number, low: number, high: number): void => {
  expect(value).toBeGreaterThanOrEqual(low - 1e-9)
  expect(value).toBeLessThanOrEqual(high + 1e-9)
}

/** A square groove 10 mm or 1/2 in from the free end, cut with a tool a little under its least width. */
const groove = (
  units: Units,
  diameter: number,
  toolWidth: number,
  reach: number,
  sizes: string,
): ReturnType<typeof planned> =>
  planned({
    units,
    diameter,
    length: units === 'inch' ? 2 : 50,
    tool: `shape: square, width: ${toolWidth}, reach: ${reach.toFixed(3)}`,
    feature: `kind: groove, name: Table row, near: ${units === 'inch' ? 0.5 : 10}, ${sizes}`,
  })

it('has the rows', () => {
  expect([rings.din471.length, rings.din471Depths.length, rings.inch.length, rings.metric.length]).toEqual([
    38, 6, 30, 49,
  ])
  expect([glands.glands.length, glands.piston.length]).toEqual([10, 1])
  expect([sheaves.classical.length, sheaves.din2211Examples.length]).toEqual([9, 2])
})

describe('retaining-ring grooves', () => {
  it.each(rings.din471)('DIN 471, shaft $shaft: groove $groove, $lower; $width wide, H13 ($source)', (row) => {
    const job = groove(
      'mm',
      row.shaft,
      row.width,
      (row.shaft - row.groove) / 2 + 1,
      `width: ${row.width} H13, bottom-diameter: ${row.groove} +0 ${row.lower}`,
    )
    within(job.size('bottomDiameter'), row.groove + row.lower, row.groove)
    within(job.bottomByDial, row.groove + row.lower, row.groove)
    within(job.size('width'), row.width, row.width + 0.14)
  })

  it.each(rings.din471Depths)(
    'DIN 471, shaft $shaft: depth $depth is half the difference of the diameters ($source)',
    (row) => {
      const { groove: bottom, width } = rings.din471.find(({ shaft }) => shaft === row.shaft)!
      const job = groove('mm', row.shaft, width, row.depth + 1, `width: ${width} H13, depth: ${row.depth}`)
      expect(job.bottomByDial).toBeCloseTo(bottom, 9)
      expect(job.size('bottomDiameter')).toBeCloseTo(bottom, 9)
    },
  )

  // No limits on the diameter in the rows that were read: within one mark of the dial, and a tie leaves metal.
  it.each(rings.inch)('inch, shaft $shaft: groove $groove, $width wide ($source)', (row) => {
    const job = groove(
      'inch',
      row.shaft,
      row.width,
      (row.shaft - row.groove) / 2 + 0.03,
      `width: ${row.width} +0.003 -0, bottom-diameter: ${row.groove}`,
    )
    within(job.bottomByDial, row.groove - 0.001, row.groove + 0.001)
    within(job.size('bottomDiameter'), row.groove - 0.001, row.groove + 0.001)
    within(job.size('width'), row.width, row.width + 0.003)
  })

  it.each(rings.metric)('ANSI B27.7, shaft $shaft: groove $groove, $width wide ($source)', (row) => {
    const job = groove(
      'mm',
      row.shaft,
      row.width,
      (row.shaft - row.groove) / 2 + 1,
      `width: ${row.width}, bottom-diameter: ${row.groove}`,
    )
    within(job.bottomByDial, row.groove - 0.01, row.groove + 0.01)
    within(job.size('bottomDiameter'), row.groove - 0.01, row.groove + 0.01)
  })
})

describe('O-ring glands', () => {
  it.each(glands.glands)('$use, section $section: depth $depth, width $width ($source)', ({ depth, width }) => {
    const tool = Math.floor(width[0]! * 800) / 1000
    const job = groove(
      'inch',
      1.5,
      tool,
      depth[1]! + 0.03,
      `width: ${width.join(' to ')}, depth: ${depth.join(' to ')}`,
    )
    within(job.size('depth'), depth[0]!, depth[1]!)
    within((1.5 - job.bottomByDial) / 2, depth[0]!, depth[1]!)
    within(job.size('width'), width[0]!, width[1]!)
  })

  // Male gland: B = A − 2F. The piston is turned to its bore here, so that the depth of the gland is the depth of the groove.
  it.each(glands.piston)(
    'bore $bore, gland $depth deep: groove diameter $groove (inputs read, result worked out)',
    (row) => {
      const job = groove('inch', row.bore, 0.18, row.depth + 0.03, `width: 0.190, depth: ${row.depth}`)
      expect(job.bottomByDial).toBeCloseTo(row.groove, 9)
    },
  )
})

describe('sheave grooves as jobs', () => {
  // Planned on a mark of the compound for each flank, so the width lies within two half marks of the aim.
  it.each(sheaves.classical)('IP-20 $section $angle°: $topWidth wide, $depth deep ($source)', (row) => {
    const root = row.topWidth - 2 * row.depth * Math.tan((row.angle * Math.PI) / 360)
    const job = planned({
      units: 'inch',
      diameter: 6,
      length: 3,
      tool: `shape: vee, angle: ${row.angle}, nose: ${(root - 0.02).toFixed(3)}, reach: ${row.depth + 0.1}`,
      feature: `kind: v-groove, name: Table row, angle: ${row.angle}, width: ${row.topWidth} ±${row.topWidthTolerance}, depth: ${row.depth}, near: 0.5`,
    })
    within(job.size('width'), row.topWidth - row.topWidthTolerance, row.topWidth + row.topWidthTolerance)
    within(job.size('depth'), row.depth - 0.0005, row.depth + 0.0005)
    expect(job.angle).toBeCloseTo(row.angle, 6)
  })

  it.each(sheaves.din2211Examples)(
    'DIN 2211 $section, datum diameter $datumDiameter: root diameter $root ($source)',
    (row) => {
      const { datumWidth } = sheaves.din2211.find(({ section }) => section === row.section)!
      const depth = (row.outside - row.root) / 2
      const job = planned({
        units: 'mm',
        diameter: row.outside,
        length: 60,
        tool: `shape: vee, angle: ${row.angle}, nose: 2, reach: ${(depth + 2).toFixed(1)}`,
        feature: `kind: v-groove, name: Table row, angle: ${row.angle}, width: ${datumWidth}, width-at: ${row.datumDiameter}, bottom-diameter: ${row.root}, near: 10`,
      })
      expect(job.bottomByDial).toBeCloseTo(row.root, 9)
      within(job.size('bottomDiameter'), row.root - 0.01, row.root + 0.01)
      within(job.size('width'), datumWidth - 0.04, datumWidth + 0.04)
    },
  )
})
