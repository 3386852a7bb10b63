import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type Outcome, runIn } from '../cli/world.ts'

/** The shop's own example files, in a world of their own. */
const read = (path: string): string => readFileSync(join(import.meta.dirname, '..', '..', path), 'utf8')
const NAMES = [
  'examples/jobs/01-press-screw.yaml',
  'examples/jobs/02-tap-plug.yaml',
  'examples/jobs/06-press-plate-boss.yaml',
  'examples/jobs/07-mill-pulley.yaml',
  'examples/jobs/09-swung-compound.yaml',
  'examples/jobs/14-whole-screw.yaml',
  'examples/lathes/bench-lathe.yaml',
  'examples/lathes/engine-lathe.yaml',
  'examples/toolboxes/toolbox.yaml',
]
const files = Object.fromEntries(NAMES.map((name) => [name, read(name)]))

const finish = (job: string, feature: string, ...rest: string[]): Promise<Outcome> =>
  runIn({ files }, 'finish', `examples/jobs/${job}.yaml`, '--feature', feature, ...rest)

type Step = { number: number; feature: number; action: string; slide?: string; reading?: number; say: string }
type Data = {
  features: {
    name: string
    status: string
    refusal?: { code: string; reason: string; remedy: string }
    edge: { width: number }
    zero: { fromEnd: number; diameter: number }
    finished: Record<string, { planned: number; low: number; high: number; verdict: string }>
  }[]
  steps: Step[]
  warnings: { feature: number | null; code: string; say: string }[]
}
const data = (outcome: Outcome): Data => JSON.parse(outcome.out)
const json = async (...args: [string, string, ...string[]]): Promise<Data> =>
  data(await finish(...args, '--format', 'json'))

const SCREW = ['01-press-screw', 'Thread-relief groove'] as const

describe('what remains', () => {
  it('follows a first measurement by hand: two thousandths large is one mark deeper', async () => {
    // Expected .7665 at reading 54; .7685 is measured, so the floor is .053 deep: the zero stands .001 out, and 73 makes .072.
    const { steps, features } = await json(...SCREW, '--bottom-diameter', '.7685')
    expect(steps[0]).toMatchObject({ number: 21, action: 'return', slide: 'cross-feed', reading: -0.05 })
    const cut = steps.filter(({ action }) => action === 'feed-in')
    expect(cut.map(({ number, reading }) => [number, reading])).toEqual([[25, 0.073]])
    expect(features[0]!.zero.diameter).toBe(0.8765)
    expect(features[0]!.finished.depth).toMatchObject({ planned: 0.072, verdict: 'holds' })
  })

  it('follows a second: the groove measures .003 narrow, so the tool is .145 and feeds .003 further', async () => {
    const { steps, features } = await json(...SCREW, '--bottom-diameter', '.7665', '--width', '.162')
    expect(features[0]!.edge.width).toBe(0.145)
    expect(steps.find(({ action }) => action === 'feed-across')!.reading).toBe(0.02)
    expect(features[0]!.finished.width!.planned).toBeCloseTo(0.165, 9)
  })

  it('is only the moves after the stop, by their old numbers, in the ordinary sheet', async () => {
    const { out, status, err } = await finish(...SCREW, '--bottom-diameter', '0.7685')
    expect([status, err]).toEqual([0, ''])
    expect(out).toContain('CIDER PRESS SCREW: WHAT REMAINS')
    expect(out).toContain('the zero of the')
    expect(out).toMatch(/^ 25 {2}CROSS-FEED in (past 0, )?to 73 /m)
    expect(out).toMatch(/^ 21 {2}CROSS-FEED IN 5 whole turns to the same mark/m)
    expect(out).not.toMatch(/^ 20 {2}/m)
    expect(out).not.toContain('FINISH BY WHAT YOU MEASURE')
    expect(out).toContain('HOLDS')
  })

  it('knows the depth better than the whole sheet did: the touch is behind it', async () => {
    const after = (await json(...SCREW, '--bottom-diameter', '.7665')).features[0]!.finished.depth!
    const whole = await runIn({ files }, 'sheet', 'examples/jobs/01-press-screw.yaml', '--format', 'json')
    const before = data(whole).features[0]!.finished.depth!
    expect(after.high - after.low).toBeLessThan(before.high - before.low)
    expect(after.planned).toBe(before.planned)
  })

  it('moves every finish of a swung compound alike', async () => {
    const written = data(await runIn({ files }, 'sheet', 'examples/jobs/09-swung-compound.yaml', '--format', 'json'))
    const { steps } = await json('09-swung-compound', 'Keeper groove', '--bottom-diameter', '1.499')
    const cuts = steps.filter(({ action }) => action === 'feed-in')
    expect(cuts.length).toBeGreaterThan(1)
    for (const { number, reading } of cuts) {
      // 1.495 expected: .004 large on the diameter is two marks of a dial that reads depth.
      expect(reading! - written.steps.find((step) => step.number === number)!.reading!).toBeCloseTo(0.002, 9)
    }
  })

  it('starts from the part as the features before have left it', async () => {
    const whole = data(await runIn({ files }, 'sheet', 'examples/jobs/14-whole-screw.yaml', '--format', 'json'))
    const last = whole.features.length - 1
    const stop = whole.steps.find(({ feature, say }) => feature === last && say.includes('FINISH BY WHAT YOU MEASURE'))!
    const bottom = /bottom diameter, ([\d.]+) expected/.exec(stop.say)![1]!
    const { steps, features } = await json('14-whole-screw', whole.features[last]!.name, '--bottom-diameter', bottom)
    expect(features).toHaveLength(1)
    expect(steps.map(({ feature, ...rest }) => rest)).toEqual(
      whole.steps
        .filter(({ feature, number }) => feature === last && number > stop.number)
        .map(({ feature, ...rest }) => rest),
    )
  })
})

describe('a bad measurement', () => {
  it('further off than all errors together is told to be taken again, before anything else', async () => {
    const { warnings, steps } = await json(...SCREW, '--bottom-diameter', '.7485')
    expect(warnings[0]).toMatchObject({ feature: 0, code: 'measure-again' })
    expect(warnings[0]!.say).toContain('measures .018 less than expected')
    // If it is true after all, the zero stands .009 in: 72 less 9.
    expect(steps.find(({ action }) => action === 'feed-in')!.reading).toBe(0.063)
  })

  it('past the smallest bottom is refused, and what is left is said', async () => {
    const outcome = await finish(...SCREW, '--bottom-diameter', '.7185', '--width', '.164')
    expect(outcome.status).toBe(1)
    // Depth .076 at the most under .8745: the bottom is .7225 at the least.
    expect(outcome.err).toContain('the bottom measures .7185, .004 under the smallest that is allowed, .7225')
    expect(outcome.err).toContain('what is left to save: the width still has .001 to go')
    expect(outcome.out).toContain('REFUSED')
    expect(outcome.out).not.toContain('CROSS-FEED in')
    const { features, steps } = await json(...SCREW, '--bottom-diameter', '.7185')
    expect(features[0]!.refusal!.code).toBe('past-limits')
    expect(steps).toEqual([])
  })

  it('wider than the drawing allows is refused, and the depth that is left is said', async () => {
    const { status, err } = await finish(...SCREW, '--bottom-diameter', '.7665', '--width', '.172')
    expect(status).toBe(1)
    expect(err).toContain('.002 over the widest that is allowed, .170')
    expect(err).toContain('the bottom still has .036 of diameter to go')
  })

  it('at the very limit can still be saved', async () => {
    expect((await finish(...SCREW, '--bottom-diameter', '.7225')).status).toBe(0)
    expect((await finish(...SCREW, '--bottom-diameter', '.7224')).status).toBe(1)
  })
})

describe('what cannot be asked', () => {
  it('is a feature that is not there, or a size that is none', async () => {
    const wrong = await finish('01-press-screw', 'Thread-relief grove', '--bottom-diameter', '.7')
    expect([wrong.status, wrong.out]).toEqual([2, ''])
    expect(wrong.err).toContain('did you mean "Thread-relief groove"?')
    expect((await finish(...SCREW, '--bottom-diameter', 'thick')).err).toContain('--bottom-diameter')
    expect((await finish(...SCREW, '--bottom-diameter', '-.7')).status).toBe(2)
    expect((await finish(...SCREW)).status).toBe(2)
  })

  it('is a form without a stop before its finish, or a width that tells no tool', async () => {
    const corner = await finish('06-press-plate-boss', 'Nose corner', '--bottom-diameter', '1')
    expect(corner.status).toBe(1)
    expect(corner.err).toContain('no stop to measure a bottom')
    const round = await finish('14-whole-screw', 'Oil groove', '--bottom-diameter', '1.2', '--width', '.2')
    expect(round.status).toBe(1)
    expect(round.err).toContain('leave --width out')
  })
})

describe('a neck against a shoulder', () => {
  const job = `title: Cider press spindle
units: inch
part:
  material: mild steel
  held: chuck
  overhang: 4
  steps:
    - { name: pilot, diameter: 1.000, length: 2, measured-diameter: 1.000 }
    - { name: body, diameter: 1.500, length: 2 }
lathe: bench.yaml
tools:
  neck: { shape: square, width: 0.148, reach: 0.400 }
features:
  - { kind: groove, name: Neck, from: body, far: 0, width: 0.165 ±0.005, depth: 0.060 ±0.004, tool: neck }
`
  const world = { files: { 'neck.yaml': job, 'bench.yaml': read('examples/lathes/bench-lathe.yaml') } }

  it('is widened at its near end, because the tool stands against the shoulder', async () => {
    const whole = data(await runIn(world, 'sheet', 'neck.yaml', '--format', 'json'))
    const stop = whole.steps.find(({ say }) => say.includes('FINISH BY WHAT YOU MEASURE'))!
    const bottom = /bottom diameter, ([\d.]+) expected/.exec(stop.say)![1]!
    const args = ['finish', 'neck.yaml', '--feature', 'Neck', '--bottom-diameter', bottom, '--format', 'json']
    const { steps, features } = data(await runIn(world, ...args, '--width', '.162'))
    // .162 for .165: the tool is .145. Its headstock side touched the shoulder, so the near end begins .003 further before 0.
    const places = (all: readonly Step[]): (number | undefined)[] =>
      all
        .filter(({ number, slide, action }) => number > stop.number && slide === 'compound' && action !== 'go-past')
        .map(({ reading }) => reading)
    expect(places(whole.steps)).toEqual([-0.017, 0])
    expect(places(steps)).toEqual([-0.02, 0])
    expect(features[0]!.finished.width!.planned).toBeCloseTo(0.165, 9)
    expect(features[0]!.zero.fromEnd - whole.features[0]!.zero.fromEnd).toBeCloseTo(0.003, 9)
  })
})
