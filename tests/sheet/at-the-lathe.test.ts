import { describe, expect, it } from 'vitest'
import { printCards } from '../../src/print/text/card/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { runIn } from '../cli/world.ts'
import { exampleSheets } from '../print/examples.ts'

const sheet = (name: string) => exampleSheets().find(([one]) => one.startsWith(name))![1]
const flat = (text: string): string => text.replace(/\s+/g, ' ')

describe('what a machinist needs at the lathe', () => {
  it('a compound that is set already is left: by its marks alone it would be less true', () => {
    const text = flat(printText(sheet('14')))
    expect(text.match(/COMPOUND set to 0° on its swivel scale/g)).toHaveLength(1)
    expect(text).toMatch(/COMPOUND left as at step 2: see that it is tight/)
  })

  it('a place is measured from what the drawing takes it from', () => {
    const text = flat(printText(sheet('14')))
    // 1.000 from the shoulder at 1.500.
    expect(text).toContain('near edge from body 1.000')
    expect(text.split('== PROOF')[0]).not.toContain('near edge from end 2.500')
  })

  it('a center has no edge for a caliper', () => {
    expect(flat(printText(sheet('14')))).toContain(
      'center from body 2.000 (caliper to the near edge, and half the width)',
    )
  })

  it('a card tells the pins, the room to wind back for, and to touch with the power off', () => {
    expect(flat(printCards(sheet('05')))).toContain('bottom diameter: over two 1/16 in pins less .125')
    const opened = flat(printCards(sheet('23')))
    expect(opened).toContain('COMPOUND wind it back first: .18 of travel needed ahead; then forward 10 marks or more')
    expect(opened).toMatch(
      /touches the cylinder beside the lines, its middle by carriage between [\d.]+ and [\d.]+, power off/,
    )
  })

  it('what is still to cut is on the card once, also where something is not asked for', async () => {
    const job = `title: Rollers
units: inch
part: { material: mild steel, held: chuck and center, diameter: 1.5, measured-diameter: 1.5, length: 8, overhang: 7 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, reads: depth }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.004, angle: 0, travel: 3 }
  spindle-speeds: [20, 45, 70, 110, 200]
  instruments: { missing: [depth-indicator, blade-micrometer, depth-micrometer] }
tools: { cord: { shape: vee, angle: 60, nose: 0, reach: 0.3 } }
features:
  - { kind: v-groove, name: Cord, angle: 60, depth: 0.1 ±.005, root: 0, tool: cord, near: 2 }
`
    const { out } = await runIn({ files: { 'job.yaml': job } }, 'sheet', 'job.yaml', '--card')
    expect(out.match(/STILL TO CUT/g)).toHaveLength(1)
    const text = flat((await runIn({ files: { 'job.yaml': job } }, 'sheet', 'job.yaml')).out)
    // A keen V has a point, and neither a nose nor a corner.
    expect(text).toContain('ALIGN point of the tool on the 2.000 line')
    expect(text).toContain('in gently until the point touches the turning surface')
  })

  it('every infeed of a finish is named by its step', () => {
    for (const [, one] of exampleSheets()) expect(printText(one)).not.toContain('every finishing step')
    expect(flat(printText(sheet('19')))).toMatch(/every infeed from step \d+ to \d+: 1 mark deeper/)
  })

  it('steps that are only roughed have no table to fill in', async () => {
    const text = printText(sheet('23'), { inspection: true })
    expect(text.split('== INSPECTION')[1]).not.toContain('IN STEPS')
  })
})
