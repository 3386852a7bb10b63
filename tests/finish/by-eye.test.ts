import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

const JOB = `title: Cider press pulley
units: inch
part: { material: mild steel, held: chuck and center, diameter: 1.5, length: 5, overhang: 4 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.010 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.010, travel: 3 }
  spindle-speeds: [100, 200, 400]
tools:
  neck: { shape: square, width: 0.125, reach: 0.2 }
  belt: { shape: vee, angle: 60, nose: 0.020, reach: 0.3 }
cutting: { side-feed: lines }
features:
  - { kind: groove, name: Neck, near: 1, width: 0.200 ±0.015, depth: 0.060 ±0.004, tool: neck }
  - { kind: v-groove, name: Belt, near: 3, angle: 60, depth: 0.150 ±0.004, root: 0.050, tool: belt }
`
const finish = (feature: string, bottom: string, width: string) =>
  runIn(
    { files: { 'job.yaml': JOB } },
    'finish',
    'job.yaml',
    ...['--feature', feature],
    ...['--bottom-diameter', bottom],
    ...['--width', width],
    '--measured-again',
  )

describe('a width that was roughed by eye', () => {
  it.each(['0.187', '0.190', '0.193'])('of %s leaves the finished width to the lines', async (width) => {
    const { status, out } = await finish('Neck', '1.410', width)
    expect(status).toBe(0)
    // The lines are scribed at 1.000 and 1.200.
    expect(out).toMatch(/^ +expected: width \.200 /m)
    expect(out).not.toMatch(/the tool is .* (wider|narrower)/)
  })

  it('refuses no V for what the eye was off', async () => {
    expect((await finish('Belt', '1.210', '0.210')).status).toBe(0)
  })

  it('is past saving over its limit all the same', async () => {
    const { status, out } = await finish('Neck', '1.410', '0.216')
    expect(status).toBe(1)
    expect(out).toContain('over the widest that is')
  })
})
