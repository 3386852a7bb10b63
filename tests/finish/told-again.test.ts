import { expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

const JOB = `title: Cider press pulleys
units: mm
part: { material: cast iron, held: chuck, diameter: 80, length: 120, overhang: 90, measured-diameter: 80.06 }
lathe:
  name: Village lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 5, reads: diameter, backlash: 0.3 }
  compound: { graduation: 0.02, per-turn: 3, backlash: 0.14, travel: 90, scale-zero: square }
  carriage: { graduation: 0.1, per-turn: 20, backlash: 0.5 }
  spindle-speeds: [60, 90, 140, 210, 320]
tools:
  vee: { shape: vee, angle: 38, nose: 3.0, reach: 12, rake-ground: 0 }
  p3: { shape: square, width: 2.95, reach: 6, rake-ground: 0 }
features:
  - { kind: v-groove, name: Flank V, method: flank-feed, angle: 38 ±1, depth: 8 ±0.15, root: 4 ±0.15, near: 6 ±0.3, tool: vee }
  - { kind: groove, name: By dial, side-feed: carriage, near: 30 ±0.3, width: 5 ±0.2, bottom-diameter: 75 ±0.2, tool: p3 }
  - { kind: groove, name: To lines, side-feed: lines, near: 45 ±0.3, width: 5 ±0.3, depth: 2.5 ±0.1, tool: p3 }
`
const finish = async (feature: string, ...more: string[]) => {
  const { status, out } = await runIn(
    { files: { 'job.yaml': JOB } },
    'finish',
    'job.yaml',
    '--feature',
    feature,
    ...more,
  )
  return { status, out: out.replace(/\s+/g, ' ') }
}

it.each(['64.98', '65.05'])('metal left by a flank feed is told from a bottom of %s as well', async (bottom) => {
  const { status, out } = await finish('Flank V', '--bottom-diameter', bottom)
  expect(status).toBe(0)
  // 80.06 less twice 8.03, the depth from the drawing's 80.00, with 0.15 either way.
  expect(out).toContain('STILL TO CUT if the bottom is over 64.30')
  expect(out).toContain('under 63.70 it is scrap')
})

it('the warning of a coarse dial tells the width that the steps below come to', async () => {
  const { out } = await finish('By dial', '--bottom-diameter', '75.98', '--width', '4.87')
  const planned = /planned unmeasured .*? width ([\d.]+) /.exec(out)![1]!
  expect(Number(planned)).toBeCloseTo(4.97, 9)
  expect(out).toContain(`the width comes out ${Number(planned).toFixed(2)},`)
})

it('a width roughed to the lines tells nothing of the tool, and the sheet says why', async () => {
  const { status, out } = await finish('To lines', '--bottom-diameter', '76.06', '--width', '4.96')
  expect(status).toBe(0)
  expect(out).toContain('roughed to the lines by eye, it says nothing about the tool')
  expect(out).not.toMatch(/the tool is [\d.]+ (wider|narrower)/)
})
