import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printText } from '../../src/print/text/print.ts'

const METRIC = `lathe:
  name: School lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 5, reads: diameter, backlash: 0.3 }
  compound: { graduation: 0.02, per-turn: 3, backlash: 0.14, travel: 90, scale-zero: square }
  spindle-speeds: [60, 90, 140, 210, 320]
`
const planOf = (job: string) =>
  compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: new TextEncoder().encode(job) })).plan!
/** The sheet's words with every break of a line taken out. */
const sheetOf = (job: string): string => printText(sheetFor(planOf(job))).replace(/\s+/g, ' ')
const tablesOf = (job: string) => sheetFor(planOf(job)).steps.flatMap(({ corrections }) => corrections ?? [])

const flank = (depth: number): string => `title: Press pulley
units: mm
part: { material: cast iron, held: chuck, diameter: 80, length: 60, overhang: 50, measured-diameter: 80.06 }
${METRIC}tools: { vee: { shape: vee, angle: 38, nose: 3.0, reach: 12, rake-ground: 0 } }
features:
  - { kind: v-groove, name: V, method: flank-feed, flank-under: 0, angle: 38 ±1, depth: ${depth} ±0.15, root: 4 ±0.15, near: 6 ±0.3, tool: vee }
`

describe('a table under a stop', () => {
  it.each([6, 7.9, 8, 8.1])('of a flank V %s deep has rows on both sides of what is expected', (depth) => {
    for (const { rows, expected } of tablesOf(flank(depth))) {
      const [first, last] = [rows[0]!.measured.value, rows.at(-1)!.measured.value]
      // Rows stand 0.038 apart: two on each side within the 0.11 that the stated errors explain.
      expect(first - expected.value).toBeGreaterThan(0.06)
      expect(expected.value - last).toBeGreaterThan(0.06)
    }
    expect(tablesOf(flank(depth))).toHaveLength(1)
  })

  it.each([0.001, 0.002, 0.003])('of a stepped hollow is there at a cusp of %s', (cusp) => {
    const [table] = tablesOf(`title: Press body
units: inch
part: { material: mild steel, held: chuck, overhang: 3, diameter: 1.375, length: 4, measured-diameter: 1.3740 }
lathe:
  # yaml-language-server: $schema=../schema/lathe.schema.json
  # The bench lathe by the window: both dials in thousandths of slide travel, a hundred to the turn.
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2 1/2 }
  carriage: { graduation: 0.010, per-turn: 0.800, backlash: 0.030 }
  spindle-speeds: [60, 95, 150, 240, 380, 600, 950]
  jaw-clearance: 1/4
  accuracy: { reading: 0.0005, touch-off: 0.001, layout: 0.005, tool: 0.0005, stock: 0.0005, runout: 0.0005 }
tools: { rnd: { shape: round, radius: 1/16, reach: 0.3, blank: 3/8, edge-offset: 3/16, rake-ground: 0 } }
features:
  - { kind: radius, shape: concave, name: Hollow, center: 1.5, radius: 1/8 ±0.005, depth: 0.07 ±0.005, tool: rnd, cusp: ${cusp} }
`)
    expect(table!.rows.length).toBeGreaterThanOrEqual(5)
  })

  it('tells by what to choose where an instrument reads between its rows, and only there', () => {
    expect(sheetOf(flank(8))).toContain('between rows in proportion, in doubt finish shallower')
    // A compound read to 0.02 and a caliper read to 0.01: every reading stands in the table by the width.
    expect(sheetOf(neck(9))).not.toContain('in doubt finish narrower')
  })
})

const neck = (reach: number): string => `title: Press nose
units: mm
part:
  material: brass
  held: chuck and center
  overhang: 100
  steps:
    - { name: nose, diameter: 24, length: 20, measured-diameter: 23.98 }
    - { name: body, diameter: 36, length: 90, measured-diameter: 36.03 }
${METRIC}tools: { right: { shape: square, width: 2.94, reach: ${reach}, blank: 8, edge-offset: 5.06, rake-ground: 0 } }
features:
  - { kind: groove, name: Neck, from: body, far: 0, width: 6 ±0.1, bottom-diameter: 21 ±0.1, leave-sides: 0.1, tool: right }
`

describe('a table by the width from a shoulder', () => {
  it.each([7, 9])(
    'is there however far the edge reaches (%s): the blank touches the shoulder no sooner than the corner did',
    (reach) => {
      // From the floor to the top of the shoulder it is (36.03 - 21) / 2 = 7.515: a blank 7 above the edge is beside it, one 9 above is not.
      expect(sheetOf(neck(reach))).toContain('AND BY THE WIDTH')
    },
  )
})
