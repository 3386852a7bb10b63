import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

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
type Step = { action: string; purpose?: string }

/** Finished by a sheet whose steps are not those that the job plans. */
const finishBy = async (change: (steps: readonly Step[]) => readonly Step[]) => {
  const files = { 'job.yaml': SHAFT }
  const sheet = JSON.parse((await runIn({ files }, 'sheet', 'job.yaml', '--format', 'json')).out)
  const kept = JSON.stringify({ ...sheet, identity: 'ANOTHER', steps: change(sheet.steps) })
  const args = ['finish', 'job.yaml', '--feature', 'Seal', '--bottom-diameter', '1.342', '--sheet', 'kept.json']
  const { status, err } = await runIn({ files: { ...files, 'kept.json': kept } }, ...args)
  return { status, err }
}

describe('a kept sheet', () => {
  it('with nothing wrong in it is finished', async () => {
    expect(await finishBy((steps) => steps)).toEqual({ status: 0, err: '' })
  })
  it('whose very first step is wrong is not proved', async () => {
    const { status, err } = await finishBy((steps) => [steps.find(({ action }) => action === 'feed-in')!, ...steps])
    expect(status).toBe(1)
    expect(err).toContain('does not prove the steps of that sheet before the stop of "Seal"')
    expect(err).toContain('turned to a reading before its dial has been set to zero')
  })
  it('whose finish surely cuts nothing, with the carriage free, is refused: no reading makes it deeper', async () => {
    const { status, err } = await finishBy((steps) => {
      const stop = steps.findIndex(({ purpose }) => purpose === 'expect-rough')
      return [...steps.slice(0, stop + 1), { action: 'unlock' }, ...steps.slice(stop + 1)]
    })
    expect(status).toBe(1)
    expect(err).toContain('no reading of these dials brings the bottom diameter inside its limits')
  })
})
