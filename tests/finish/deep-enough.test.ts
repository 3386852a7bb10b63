import { expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

/** The bottom may be .020 smaller or larger than drawn. */
const SHAFT = `title: Press shaft
units: inch
part: { material: mild steel, held: chuck, overhang: 4, diameter: 1.500, measured-diameter: 1.500, length: 6 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools: { sq: { shape: square, width: 0.125, reach: 0.3 } }
features:
  - { kind: groove, name: Seal, near: 1.5, width: 0.125, bottom-diameter: 1.300 ±0.020, tool: sq }
`

/** 1.340 is expected at the stop. Half of what is missing is how far in the zero stands: .1 less that is the reading. */
it.each([
  ['1.300', 0.08],
  ['1.296', 0.078],
  ['1.290', 0.075],
])('roughed to %s already, the finish goes where the measured zero says, and no less deep', async (bottom, reading) => {
  const args = ['finish', 'job.yaml', '--feature', 'Seal', '--bottom-diameter', bottom, '--measured-again']
  const { out, status } = await runIn({ files: { 'job.yaml': SHAFT } }, ...args, '--format', 'json')
  const { steps, features } = JSON.parse(out)
  const finish = steps.filter(({ purpose }: { purpose?: string }) => purpose === 'finish')
  expect([status, finish.length]).toEqual([0, 1])
  expect(finish[0].reading).toBeCloseTo(reading, 9)
  expect(features[0].finished.bottomDiameter.planned).toBeCloseTo(Number(bottom), 9)
})
