import { describe, expect, it } from 'vitest'
import { leftBy } from '../../src/features/rough.ts'
import type { Form } from '../../src/moves/form.ts'
import { linePiece } from '../../src/moves/pieces.ts'
import { runIn } from '../cli/world.ts'
import { inch, toInch } from '../replay/shop.ts'

const flat = (from: number, to: number, d: number) => linePiece(inch(from), inch(d - 1), inch(to), inch(d - 1))

describe('what steps leave', () => {
  // A V of 90 degrees, .200 deep, sharp: at a depth d its flanks are d inside its edges at 1 and 1.4. Expected by plain sums.
  const drawn: Form = [
    linePiece(inch(1), inch(-1), inch(1.2), inch(-0.8)),
    linePiece(inch(1.2), inch(-0.8), inch(1.4), inch(-1)),
  ]
  const region = { from: inch(1), to: inch(1.4) }
  const told = (cut: Form) => Object.entries(leftBy(cut, drawn, region)).map(([key, by]) => [key, toInch(by)])

  it('is the least at the bottom of a wall and the most at its top, along the work', () => {
    // One slot from 1.100 to 1.300, .080 deep: its walls are .100 from the edge at the top, and .100 − .080 at the bottom.
    const cut: Form = [flat(0, 1.1, 0), flat(1.1, 1.3, 0.08), flat(1.3, 3, 0)]
    expect(told(cut)).toEqual([
      ['least', expect.closeTo(0.02, 9)],
      ['most', expect.closeTo(0.1, 9)],
      ['floor', expect.closeTo(0.12, 9)],
    ])
  })

  it('is the least and the most at the ends of what slopes down to the floor', () => {
    // From 1.100 at the top to 1.160 at .080 deep, a level of .040, and up again a straight wall at 1.260.
    const cut: Form = [
      flat(0, 1.1, 0),
      linePiece(inch(1.1), inch(-1), inch(1.16), inch(-0.92)),
      flat(1.16, 1.2, 0.08),
      flat(1.2, 1.26, 0.077),
      flat(1.26, 3, 0),
    ]
    // At 1.100: .100 from the edge; at 1.160: .160 − .080; at 1.260, .140 from the other edge: .140 and .140 − .077; the ledge of .003 is no step.
    expect(told(cut)).toEqual([
      ['least', expect.closeTo(0.063, 9)],
      ['most', expect.closeTo(0.14, 9)],
      ['floor', expect.closeTo(0.12, 9)],
    ])
  })

  it('counts every step on both sides', () => {
    const cut: Form = [
      flat(0, 1.05, 0),
      flat(1.05, 1.12, 0.04),
      flat(1.12, 1.28, 0.09),
      flat(1.28, 1.38, 0.01),
      flat(1.38, 3, 0),
    ]
    // At 1.05: .050 and .010; at 1.12: .080 and .030; at 1.28, .120 from the other edge: .110 and .030; at 1.38: .020 and .010.
    expect(told(cut)).toEqual([
      ['least', expect.closeTo(0.01, 9)],
      ['most', expect.closeTo(0.11, 9)],
      ['floor', expect.closeTo(0.11, 9)],
    ])
  })
})

const job = (features: readonly string[], more: readonly string[] = []): string =>
  [
    'title: Rollers of the press',
    'units: inch',
    'part: { material: mild steel, held: chuck and center, diameter: 3, length: 8, overhang: 7 }',
    'lathe:',
    '  name: Long shed lathe',
    '  units: inch',
    '  cross-feed: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, reads: depth }',
    '  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.004, angle: 0, travel: 3 }',
    '  spindle-speeds: [20, 45, 70, 110]',
    'tools:',
    '  belt: { shape: vee, angle: 38, nose: 0.150, reach: 0.6 }',
    '  cord: { shape: vee, angle: 60, nose: 0.030, reach: 0.6 }',
    '  rope: { shape: round, radius: 0.25, reach: 0.6 }',
    '  small: { shape: round, radius: 0.125, reach: 0.6 }',
    '  opener: { shape: square, width: 0.100, reach: 0.6 }',
    '  small-square: { shape: square, width: 0.080, reach: 0.6 }',
    '  narrow: { shape: vee, angle: 30, nose: 0.080, reach: 0.6 }',
    '  keen: { shape: vee, angle: 30, nose: 0.010, reach: 0.6 }',
    '  wide: { shape: square, width: 0.300, reach: 0.6 }',
    'features:',
    ...features.map((one) => `  - { ${one} }`),
    ...more,
    '',
  ].join('\n')

const BELT = 'kind: v-groove, name: Belt, angle: 38, depth: 0.4, root: 0.180, tool: belt'
const CORD = 'kind: v-groove, name: Cord, angle: 60, depth: 0.3, root: 0.040, tool: cord'
const ROPE = 'kind: radius, shape: concave, name: Rope, radius: 0.25, depth: 0.2, tool: rope'

const namesOf = async (text: string): Promise<readonly string[]> => {
  const { out } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--format', 'json')
  return JSON.parse(out).features.map(({ name, status }: { name: string; status: string }) =>
    status === 'planned' ? name : `${name}: ${status}`,
  )
}

describe('the order of work', () => {
  it('roughs all steps with one tool before the tools that finish them', async () => {
    const features = [`${BELT}, near: 2, rough-tool: opener`, `${CORD}, near: 4, rough-tool: opener`]
    expect(await namesOf(job(features))).toEqual(['Belt, in steps', 'Cord, in steps', 'Belt', 'Cord'])
  })

  it('takes in between what the same tool finishes', async () => {
    const groove = 'kind: groove, name: Neck, near: 5, width: 0.15, depth: 0.05, tool: opener'
    expect(await namesOf(job([groove, `${BELT}, near: 2, rough-tool: opener`]))).toEqual([
      'Belt, in steps',
      'Neck',
      'Belt',
    ])
  })

  it('is that of the job, steps before their form', async () => {
    const features = [
      `${BELT}, near: 2, rough-tool: opener, order: 2`,
      `${CORD}, near: 4, rough-tool: opener, order: 1`,
    ]
    expect(await namesOf(job(features))).toEqual(['Cord, in steps', 'Cord', 'Belt, in steps', 'Belt'])
  })
})

describe('a V tool that roughs a V in steps', () => {
  const steps = async (tool: string) => {
    const text = job([`${BELT}, near: 2, rough-tool: ${tool}`])
    const { out } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--format', 'json')
    const sheet = JSON.parse(out)
    const of = sheet.steps.filter(({ feature }: { feature: number }) => feature === 0)
    const cuts = of
      .filter(({ action }: { action: string }) => action === 'feed-in')
      .map((step: { reading: number }) => step.reading)
    return { of, cuts, notes: sheet.features[0].notes.join(' '), warnings: sheet.features[0].warnings }
  }

  it('goes down in layers of one bite, as both of its flanks cut', async () => {
    const { cuts } = await steps('narrow')
    // .400 less twice the leave of half of .020: .380 deep, by a nose of .080 in four layers of .095, whole marks.
    expect(cuts[0]).toBe(0.095)
    expect(Math.max(...cuts)).toBe(0.38)
    const deepest = cuts.indexOf(0.38)
    expect(cuts.slice(0, deepest)).toEqual(expect.arrayContaining([0.095, 0.19, 0.285]))
  })

  it('needs fewer places than a square tool as wide, and leaves no more on the flanks', async () => {
    const square = await steps('small-square')
    const vee = await steps('narrow')
    const placesOf = ({ of }: { of: readonly { action: string; purpose: string; reading: number }[] }) =>
      new Set(
        of
          .filter(({ purpose, action }) => purpose === 'to-place' && action !== 'go-past')
          .map(({ reading }) => reading),
      ).size
    expect(placesOf(vee)).toBeLessThan(placesOf(square))
    const most = ({ notes }: { notes: string }) => Number(/to (\.\d+) on the flanks/.exec(notes)![1])
    expect(most(vee)).toBeLessThanOrEqual(most(square) + 0.001)
  })
})

describe('a tool that is to rough a form in steps', () => {
  const refusal = async (...features: readonly string[]) => {
    const { status, err } = await runIn({ files: { 'job.yaml': job(features) } }, 'sheet', 'job.yaml')
    return { status, err: err.replace(/\s+/g, ' ') }
  }

  it.each([
    [
      'is neither square nor a V',
      `${BELT}, near: 2, rough-tool: rope`,
      'tool "rope" is to rough it in steps, and is no square tool',
    ],
    [
      'is a V under a round groove',
      `${ROPE}, near: 2, rough-tool: narrow`,
      'tool "narrow" is to rough it in steps, and is no square tool',
    ],
    [
      'is a V of more angle than the form',
      `${BELT}, near: 2, rough-tool: cord`,
      'tool "cord" is to rough it in steps, and has 60° for a V of 38°',
    ],
    [
      'is a keen V',
      `${BELT}, near: 2, rough-tool: keen`,
      'the nose of tool "keen", .010, is too narrow to rough in steps with',
    ],
    ['does not go halfway down', `${CORD}, near: 2, rough-tool: wide`, 'does not go halfway down this form'],
    [
      'is named for a form that is stepped along',
      `${ROPE.replace('tool: rope', 'tool: small')}, near: 2, rough-tool: opener`,
      'this form is stepped along by its own tool',
    ],
    [
      'would be brought to the lines by eye at every place',
      `${BELT}, near: 2, rough-tool: opener, side-feed: lines`,
      'roughing it in steps: side-feed: lines is asked for',
    ],
    [
      'would leave nearly all of a small form',
      'kind: radius, shape: concave, name: Oil, radius: 0.25, depth: 0.016, tool: rope, near: 2, rough-tool: opener',
      'so small that steps would leave nearly all of it',
    ],
    ['is in no toolbox', `${BELT}, near: 2, rough-tool: openr`, 'no tool is called "openr"'],
  ])('is refused where it %s', async (_, feature, reason) => {
    const { status, err } = await refusal(feature)
    expect(status).toBeGreaterThan(0)
    expect(err).toContain(reason)
    expect(err).toMatch(/remedy: |did you mean "opener"/)
  })

  it('is refused where two tools brought to the lines by eye might be further apart than what the steps leave', async () => {
    const text = job([`${BELT}, near: 2, rough-tool: opener`])
    const coarse = text.replace('  spindle-speeds', '  accuracy: { layout: 0.010 }\n  spindle-speeds')
    const { status, err } = await runIn({ files: { 'job.yaml': coarse } }, 'sheet', 'job.yaml')
    expect([status, err.includes('leave-sides: .020')]).toEqual([1, true])
    const mended = coarse.replace('rough-tool: opener', 'rough-tool: opener, leave-sides: .020')
    expect((await runIn({ files: { 'job.yaml': mended } }, 'sheet', 'job.yaml')).status).toBe(0)
  })

  it('leaves no surface between the lines: the tool that finishes the form is touched off beside them', async () => {
    const text = job([`${ROPE}, near: 2, rough-tool: opener`])
    const { out } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--format', 'json')
    const { features, steps } = JSON.parse(out)
    const [from, to] = features[1].touch.at.against.over
    expect(to <= 2 || from >= 2.5).toBe(true)
    const own = steps.filter(({ feature }: { feature: number }) => feature === 1)
    const place = (action: string) => own.findIndex((step: { action: string }) => step.action === action)
    expect(place('touch-off')).toBeLessThan(place('align'))
    // As deep as the drawing says, from the surface beside it.
    expect(features[1].finished.depth.planned).toBeCloseTo(0.2, 3)
  })

  describe('beside grooves that are cut before', () => {
    // Belt goes from 2.000 to about 2.455; beside it the nose of .150 wants .075 and .010 to each side.
    const beside = (near: number, name: string) =>
      `kind: groove, name: ${name}, near: ${near}, width: 0.15, depth: 0.1, tool: opener, order: 1`
    const planned = async (features: readonly string[]) => {
      const { status, out } = await runIn(
        { files: { 'job.yaml': job(features) } },
        'sheet',
        'job.yaml',
        '--format',
        'json',
      )
      return { status, features: JSON.parse(out).features }
    }

    it('the form tool is touched off where they have left the surface', async () => {
      const { status, features } = await planned([
        beside(1.8, 'Near'),
        `${BELT}, near: 2, rough-tool: opener, order: 2`,
      ])
      expect([status, features.map(({ name }: { name: string }) => name)]).toEqual([
        0,
        ['Near', 'Belt, in steps', 'Belt'],
      ])
      const [from, to] = features[2].touch.at.against.over
      // Not between 1.950 and 2.000, where there is no room for it, but on the other side.
      expect(from).toBeGreaterThan(2.455 + 0.075)
      expect(to).toBeGreaterThanOrEqual(from)
    })

    it('nor is it roughed where it cannot be touched off for its finish', async () => {
      const { status, features } = await planned([
        beside(1.8, 'Near'),
        beside(2.5, 'Far'),
        `${BELT}, near: 2, rough-tool: opener, order: 2`,
      ])
      expect(status).toBe(1)
      expect(features.map(({ name, status: one }: { name: string; status: string }) => [name, one])).toEqual([
        ['Near', 'planned'],
        ['Far', 'planned'],
        ['Belt', 'refused'],
      ])
      expect(JSON.stringify(features[2])).toContain('beside them there is no room to touch off tool')
    })
  })

  it('is refused where there is no room beside the lines to touch off', async () => {
    const text = job([`${ROPE}, near: .010, rough-tool: opener`]).replace(
      'diameter: 3, length: 8',
      'steps: [{ name: rim, diameter: 3, length: 0.51 }, { name: hub, diameter: 2, length: 7.49 }]',
    )
    const { status, err } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml')
    expect(status).toBe(1)
    expect(err.replace(/\s+/g, ' ')).toContain('no room to touch off')
  })

  it('lets the form tool go down to the steps at once, and then no further than an infeed at a time', async () => {
    const text = job([`${BELT}, near: 2, rough-tool: opener`])
    const { out } = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--format', 'json')
    const { features, steps } = JSON.parse(out)
    const most = Number(/to (\.\d+) on the flanks/.exec(features[0].notes.join(' '))![1])
    // The flank of the tool, at the depth d of its nose, is (.4 − d) tan 19° from the drawn one: there it meets what sticks out most.
    const meets = 0.4 - most / Math.tan((19 * Math.PI) / 180)
    const infeeds: number[] = steps
      .filter(
        (step: { feature: number; action: string; purpose: string }) =>
          step.feature === 1 && step.action === 'feed-in' && step.purpose === 'rough',
      )
      .map(({ reading }: { reading: number }) => reading)
    expect(infeeds[0]).toBeGreaterThan(0.15)
    expect(infeeds[0]).toBeLessThanOrEqual(meets + 0.06 + 0.0005)
    infeeds.slice(1).forEach((reading, i) => {
      // At the next place it begins at the same depth.
      if (reading > infeeds[i]!) expect(reading - infeeds[i]!).toBeLessThanOrEqual(0.0601)
      else expect(reading).toBeCloseTo(infeeds[0]!, 6)
    })
  })
})
