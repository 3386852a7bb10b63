import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

const BENCH = `units: inch
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.006 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 3 }
  carriage: { readout: 0.001 }
  spindle-speeds: [100, 200, 400]
`
const WIDE = `title: Wide groove
${BENCH}part: { material: brass, held: chuck, diameter: 1 1/4, length: 4, overhang: 2.5, measured-diameter: 1.248 }
tools:
  blade: { shape: square, width: 0.1230, reach: 0.200 }
cutting: { leave: 0.010, infeed: 0.060 }
features:
  - { kind: groove, name: Wide, near: 0.750 ±0.010, width: 0.500 ±0.006, depth: 0.120 ±0.004, tool: blade, leave-sides: 0.008, walls: swept }
  - { kind: groove, name: Side, near: 1.500 ±0.010, width: 0.200 ±0.006, depth: 0.120 ±0.004, tool: blade, side-feed: carriage }
  - { kind: groove, name: Lines, near: 2.000 ±0.010, width: 0.200 ±0.012, depth: 0.120 ±0.004, tool: blade, side-feed: lines }
`
type Step = { number: number; action: string; slide?: string; reading?: number; purpose?: string }
type Data = {
  features: { refusal?: { code: string; reason: string; remedy: string } }[]
  steps: Step[]
}
const finish = async (feature: string, bottom: string, ...more: string[]) => {
  // So far off nothing is planned before it was measured twice.
  const rest = ['--bottom-diameter', bottom, '--measured-again', '--format', 'json', ...more]
  const { status, out } = await runIn(
    { files: { 'job.yaml': WIDE } },
    'finish',
    'job.yaml',
    '--feature',
    feature,
    ...rest,
  )
  return { status, ...(JSON.parse(out) as Data) }
}
const feeds = (steps: readonly Step[], purpose: string) =>
  steps.filter((step) => step.action === 'feed-in' && step.purpose === purpose).map(({ reading }) => reading)

describe('a bottom that measures far too large, and not by a whole turn of the cross-feed', () => {
  it('is roughed again at every place, within the infeed, before it is finished', async () => {
    const { status, steps } = await finish('Wide', '1.208')
    expect(status).toBe(0)
    // 1.248 − 2 · .110 = 1.028 is expected: the zero stands .090 out, so .060 and .110 are .150 and .200, and .120 is .210.
    expect(feeds(steps, 'rough')).toEqual([1, 2, 3, 4, 5].flatMap(() => [0.15, 0.2]))
    expect(feeds(steps, 'finish')).toEqual([0.21])
    expect(steps.filter(({ action }) => action === 'measure')).toHaveLength(2)
    // The tool comes from the last place to the first: back past it, and forward onto it.
    const along = steps.filter(({ slide }) => slide === 'compound').map(({ action, reading }) => [action, reading])
    expect(along.slice(0, 3)).toEqual([
      ['go-past', expect.any(Number)],
      ['return', 0.008],
      ['shift', 0.098],
    ])
    expect(along[0]![1]).toBeLessThanOrEqual(0.002)
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, i) => steps[0]!.number + i))
  })

  it('goes back to the first place by the carriage where that feeds across', async () => {
    const { status, steps } = await finish('Side', '1.208')
    expect(status).toBe(0)
    const first = steps.findIndex(({ purpose }) => purpose === 'rough')
    expect(steps.slice(0, first).findLast(({ action }) => action === 'move-carriage')!.reading).toBe(0)
    expect(feeds(steps, 'rough')).toEqual([0.15, 0.2, 0.15, 0.2])
  })

  it('goes to the lines again where they are worked to', async () => {
    const { status, steps } = await finish('Lines', '1.208')
    expect(status).toBe(0)
    expect(feeds(steps, 'rough')).toEqual([0.15, 0.2, 0.15, 0.2])
  })

  it('says so, and which numbers the steps have then', async () => {
    const { out } = await runIn(
      { files: { 'job.yaml': WIDE } },
      ...['finish', 'job.yaml', '--feature', 'Wide', '--bottom-diameter', '1.208', '--measured-again'],
    )
    expect(out.replace(/\s+/g, ' ')).toMatch(/The roughing stopped short: .* Steps \d+ to \d+ rough again/)
  })
})

it('what the finish can take at once is not roughed again', async () => {
  const { steps } = await finish('Wide', '1.050')
  expect(feeds(steps, 'rough')).toEqual([])
  expect(feeds(steps, 'finish')).toEqual([0.131])
})

describe('a figure that nothing on the part can measure', () => {
  it('in millimeters in an inch job is refused with the question', async () => {
    const { status, features } = await finish('Wide', '26.1')
    expect([status, features[0]!.refusal!.code]).toEqual([1, 'no-size'])
    expect(features[0]!.refusal!.remedy).toContain('is that in mm?')
  })
  it('that is too small by that factor is questioned too, and one that is too small by another is not', async () => {
    // 1.028 / 25.4.
    expect((await finish('Wide', '0.0405')).features[0]!.refusal!.remedy).toContain('is that in mm?')
    expect((await finish('Wide', '0.2')).features[0]?.refusal?.remedy ?? '').not.toContain('is that in mm?')
  })
  it('at the outside diameter and over it is refused', async () => {
    for (const bottom of ['1.248', '1.3']) expect((await finish('Wide', bottom)).status).toBe(1)
    expect((await finish('Wide', '1.3')).features[0]!.refusal!.remedy).not.toContain('is that in mm?')
  })
  it('of a width is refused from more than three times of what the drawing wants', async () => {
    const codeOf = async (width: string) =>
      (await finish('Wide', '1.028', '--width', width)).features[0]!.refusal?.code ?? null
    expect([await codeOf('1.499'), await codeOf('1.500'), await codeOf('1.501')]).toEqual([
      'past-limits',
      'past-limits',
      'no-size',
    ])
  })
  it('of a width in inches in a job in millimeters is refused with the question', async () => {
    // Half an inch is 12.7 mm: a width of .5 typed where millimeters are wanted.
    const metric = WIDE.replace('units: inch', 'units: mm')
      .replace(
        /part: .*/,
        'part: { material: brass, held: chuck, diameter: 32, length: 100, overhang: 60, measured-diameter: 32 }',
      )
      .replace('width: 0.1230, reach: 0.200', 'width: 3.00, reach: 5')
      .replace('{ leave: 0.010, infeed: 0.060 }', '{ leave: 0.25, infeed: 1.5 }')
      .replace(
        /features:.*/s,
        'features:\n  - { kind: groove, name: Wide, near: 20, width: 12.7 ±0.15, depth: 3 ±0.1, tool: blade }\n',
      )
      .replace(
        'cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.006 }',
        'cross-feed: { graduation: 0.02, per-turn: 2, reads: depth, backlash: 0.15 }',
      )
      .replace(
        'compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 3 }',
        'compound: { graduation: 0.02, per-turn: 2, backlash: 0.15, travel: 75 }',
      )
      .replace('carriage: { readout: 0.001 }', 'carriage: { readout: 0.02 }')
    const args = ['--bottom-diameter', '26.5', '--width', '0.5', '--measured-again', '--format', 'json']
    const { out } = await runIn({ files: { 'job.yaml': metric } }, 'finish', 'job.yaml', '--feature', 'Wide', ...args)
    const { refusal } = JSON.parse(out).features[0]
    expect([refusal.code, refusal.remedy.startsWith('is that in inches? the job is in mm')]).toEqual(['no-size', true])
  })
  it('of a width is refused too', async () => {
    const { status, features } = await finish('Wide', '1.028', '--width', '12.3')
    expect([status, features[0]!.refusal!.code]).toEqual([1, 'no-size'])
    expect(features[0]!.refusal!.remedy).toContain('is that in mm?')
  })
  it('under nothing is no size', async () => {
    const { status } = await runIn(
      { files: { 'job.yaml': WIDE } },
      ...['finish', 'job.yaml', '--feature', 'Wide', '--bottom-diameter=-1'],
    )
    expect(status).toBe(2)
  })
})
