import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type Outcome, runIn } from '../cli/world.ts'

/** The shop's own example files, in a world of their own. */
const read = (path: string): string => readFileSync(join(import.meta.dirname, '..', '..', path), 'utf8')
const NAMES = [
  'examples/jobs/01-press-screw.yaml',
  'examples/jobs/02-tap-plug.yaml',
  'examples/jobs/05-bearing-bush.yaml',
  'examples/jobs/06-press-plate-boss.yaml',
  'examples/jobs/07-mill-pulley.yaml',
  'examples/jobs/09-swung-compound.yaml',
  'examples/jobs/14-whole-screw.yaml',
  'examples/jobs/16-compound-left-swung.yaml',
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
    expect(out).toMatch(/^ 25 {2}CROSS-FEED in (past 0, )?to 73; rest 1 s /m)
    expect(out).toMatch(/^ 21 {2}CROSS-FEED IN 5 whole turns to the same mark/m)
    expect(out).not.toMatch(/^ 20 {2}/m)
    expect(out).not.toContain('FINISH BY ')
    expect(out).toContain('in tolerance, worst case')
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
    const stop = whole.steps.find(({ feature, say }) => feature === last && say.includes('FINISH BY '))!
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
  it('further off than all errors together is refused until it was measured again: no move stands under a STOP', async () => {
    const once = await finish(...SCREW, '--bottom-diameter', '.7485')
    expect(once.status).toBe(1)
    expect(once.err).toContain(
      'the bottom measures .018 less than expected, and all stated errors together explain .004',
    )
    expect(once.err).toContain('if it measures the same, add --measured-again')
    expect(once.out).not.toMatch(/CROSS-FEED|STOP, measure/)
    const { features, steps } = data(await finish(...SCREW, '--bottom-diameter', '.7485', '--format', 'json'))
    expect([features[0]!.refusal!.code, steps]).toEqual(['measure-again', []])
  })

  it('measured again and the same, is planned from and said', async () => {
    const twice = await finish(...SCREW, '--bottom-diameter', '.7485', '--measured-again')
    expect([twice.status, twice.err]).toEqual([0, ''])
    expect(twice.out.replace(/\s+/g, ' ')).toContain('Measured again: the bottom is .018 smaller than expected')
    expect(twice.out).not.toContain('STOP:')
    // If it is true, the zero stands .009 in: 72 less 9.
    const { steps } = await json(...SCREW, '--bottom-diameter', '.7485', '--measured-again')
    expect(steps.find(({ action }) => action === 'feed-in')!.reading).toBe(0.063)
  })

  it('at the last row of the table is planned, and a tenth past it is not', async () => {
    // .004 of diameter is what the sheet says that the stated errors explain: .7665 and .004.
    for (const [bottom, status] of [
      ['.7705', 0],
      ['.7625', 0],
      ['.7706', 1],
      ['.7624', 1],
    ] as const)
      expect((await finish(...SCREW, '--bottom-diameter', bottom)).status, bottom).toBe(status)
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
    expect((await finish(...SCREW, '--bottom-diameter', '.7225', '--measured-again')).status).toBe(0)
    expect((await finish(...SCREW, '--bottom-diameter', '.7224', '--measured-again')).status).toBe(1)
  })
})

describe('an outside that measures otherwise', () => {
  it('says so where the outside measures what the job says', async () => {
    const { out } = await finish(...SCREW, '--bottom-diameter', '.7665', '--outside-diameter', '.8745')
    expect(out.replace(/\s+/g, ' ')).toContain('Outside diameter measured .8745, .8745 in the job.')
  })
  it('carries the depth with it: nothing is off where the bottom is as much larger', async () => {
    // .8745 in the job, .8785 by micrometer: the tool touched that, and .054 under it is .7705. The depth of .072 makes .7345.
    const { steps, features } = await json(...SCREW, '--bottom-diameter', '.7705', '--outside-diameter', '.8785')
    expect(steps.find(({ action }) => action === 'feed-in')!.reading).toBe(0.072)
    expect(features[0]!.finished.bottomDiameter!.planned).toBeCloseTo(0.7345, 9)
    expect(features[0]!.finished.depth).toMatchObject({ planned: 0.072, verdict: 'holds' })
    expect(features[0]!.zero.diameter).toBe(0.8785)
  })

  it('moves the limits of the bottom: what is past under one is not under the other', async () => {
    // .076 deep at the most: under .8745 the bottom may be .7225, under .8705 it may be .7185.
    const under = ['--bottom-diameter', '.7200', '--measured-again']
    expect((await finish(...SCREW, ...under)).status).toBe(1)
    expect((await finish(...SCREW, ...under, '--outside-diameter', '.8705')).status).toBe(0)
  })

  it('changes no step where the drawing gives the bottom diameter, and says so', async () => {
    const steps = async (...more: string[]) =>
      (await json('02-tap-plug', 'Seal groove', '--bottom-diameter', '.9545', ...more)).steps
    expect(await steps('--outside-diameter', '1.130')).toEqual(await steps())
    const { out } = await finish(
      '02-tap-plug',
      'Seal groove',
      '--bottom-diameter',
      '.9545',
      '--outside-diameter',
      '1.13',
    )
    expect(out.replace(/\s+/g, ' ')).toContain('gives this form by its bottom diameter, so that changes no step')
  })
})

describe('a width on other forms', () => {
  it('tells the radius of a round tool by its chord', async () => {
    // R = W²/8h + h/2: on 1.7502, h = .0316, and a width of .141 is R = .019881/.2528 + .0158 = .0944, .0007 more than 3/32.
    const { features } = await json(
      '05-bearing-bush',
      'Outer oil groove',
      '--bottom-diameter',
      '1.687',
      '--width',
      '.141',
    )
    const h = (1.7502 - 1.687) / 2
    const edge = features[0]!.edge as unknown as { radius: number }
    expect(edge.radius).toBeCloseTo(0.141 ** 2 / (8 * h) + h / 2, 6)
  })

  it('feeds the carriage further where that feeds across, by its indicator', async () => {
    // .156 expected with .148 and 8 on the indicator; .154 measures a tool of .146, and .15625 drawn wants .01025 of it: .010.
    const { steps, features } = await json(
      '16-compound-left-swung',
      SCREW[1],
      '--bottom-diameter',
      '1.134',
      '--width',
      '.154',
    )
    expect(steps.find(({ action }) => action === 'feed-across')).toMatchObject({ slide: 'carriage', reading: 0.01 })
    expect(features[0]!.finished.width!.planned).toBeCloseTo(0.156, 9)
  })

  it('moves the last place of a swung compound, and the depth there with it', async () => {
    const written = data(await runIn({ files }, 'sheet', 'examples/jobs/09-swung-compound.yaml', '--format', 'json'))
    const stop = written.steps.find(({ say }) => say.includes('FINISH BY '))!
    const wide = Number(/width, ([\d.]+) expected/.exec(stop.say)![1]!)
    const args = ['--bottom-diameter', '1.495', '--width', (wide - 0.003).toFixed(4)]
    const { steps, features, warnings } = await json('09-swung-compound', 'Keeper groove', ...args)
    const [was, is] = [written.steps, steps].map((all) =>
      all.filter(({ number, action }) => number > stop.number && (action === 'shift' || action === 'feed-in')),
    )
    // At 30° a travel of C is C·cos 30° along and C·sin 30° deep: .003 along is .0035 on the dial and .0017 in depth.
    const moved = is!.map(({ reading }, i) => reading! - was![i]!.reading!)
    const angle = (features[0] as unknown as { compoundAngle: number }).compoundAngle
    expect(moved[0]).toBeCloseTo(0, 9)
    expect(Math.abs(moved[1]! * Math.cos((angle * Math.PI) / 180) - 0.003)).toBeLessThan(0.001)
    expect(Math.abs(moved[2]! + moved[1]! * Math.sin((angle * Math.PI) / 180))).toBeLessThanOrEqual(0.001)
    expect(features[0]!.finished.width!.verdict).toBe('holds')
    expect(warnings[0]!.say).toMatch(/^The width measures \.003\d* less than expected, .* measure it before you go on/)
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
    // A groove cannot measure .600 over a tool of 3/32 radius that is .0315 deep, whatever that tool really is ground to.
    const round = await finish('05-bearing-bush', 'Outer oil groove', '--bottom-diameter', '1.6872', '--width', '.003')
    expect(round.status).toBe(1)
    expect(round.err).toContain('leave --width out')
    const outside = await finish(...SCREW, '--bottom-diameter', '.7665', '--outside-diameter', '.7665')
    expect([outside.status, outside.out]).toEqual([2, ''])
    expect(outside.err).toContain('--outside-diameter')
  })
})

describe('a neck against a shoulder', () => {
  const job = `title: Cider press spindle
units: inch
part:
  material: mild steel
  held: chuck
  overhang: 3.5
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
    const stop = whole.steps.find(({ say }) => say.includes('FINISH BY '))!
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
