import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

/** A keen V of 60 degrees, .100 deep in three passes: .080 at the stop, 2 · .080 · tan 30° = .0924 wide, 1.340 at the bottom. */
const JOB = `title: Rollers of the press
units: inch
part: { material: mild steel, held: chuck and center, diameter: 1.5, measured-diameter: 1.5, length: 8, overhang: 7 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, reads: depth }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.004, angle: 0, travel: 3 }
  spindle-speeds: [20, 45, 70, 110, 200]
tools:
  cord: { shape: vee, angle: 60, nose: 0, reach: 0.3 }
features:
  - { kind: v-groove, name: Cord, angle: 60, depth: 0.1 ±.005, root: 0, tool: cord, near: 2 }
`
const finish = async (bottom: string, width: string) => {
  const { status, out } = await runIn(
    { files: { 'job.yaml': JOB } },
    ...['finish', 'job.yaml', '--bottom-diameter', bottom, '--width', width, '--measured-again', '--format', 'json'],
  )
  const { steps, features } = JSON.parse(out)
  const last = steps.find(({ purpose }: { purpose?: string }) => purpose === 'finish')
  return { status, reading: last?.reading ?? null, code: features[0].refusal?.code ?? null }
}

describe('the width of a keen V', () => {
  it.each([
    ['as the sheet has it', '1.340', '.0924', 0.1],
    ['off by what a caliper is', '1.340', '.0936', 0.1],
    ['less than the bottom makes', '1.342', '.0900', 0.101],
    ['more than the bottom makes', '1.342', '.0920', 0.101],
  ])('%s says nothing about its point: the bottom sets the reading', async (_, bottom, width, reading) => {
    expect(await finish(bottom, width)).toEqual({ status: 0, reading, code: null })
  })

  it('that no angle and no caliper explain is still asked about', async () => {
    expect((await finish('1.340', '.0800')).status).toBe(1)
  })
})
