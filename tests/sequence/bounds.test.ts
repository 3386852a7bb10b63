import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { MOST_MOVES } from '../../src/moves/bounds.ts'
import { groovesJob, wideJob } from '../bench/grown.mjs'
import { told } from '../prose.ts'

const featuresOf = (text: string) =>
  compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text })).plan!.features

const movesOf = (text: string): number => {
  const [feature] = featuresOf(text)
  if (feature?.status !== 'planned') throw new Error(`refused: ${feature && told(feature.reason)}`)
  return feature.operation.moves.length
}

const refusalOf = (text: string): { code: string; reason: string; remedy: string } => {
  const [feature] = featuresOf(text)
  if (feature?.status !== 'refused') throw new Error('planned')
  return { code: feature.code, reason: told(feature.reason), remedy: told(feature.remedy) }
}

const corner = (units: 'inch' | 'mm', compound: string): string => `title: Spindle end of the cider press
units: ${units}
part: { material: mild steel, held: chuck, overhang: 90 mm, diameter: 75 mm, length: 250 mm }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.02 mm, per-turn: 2 mm, backlash: 0.1 mm }
  compound: { ${compound} }
  spindle-speeds: [60, 95, 150]
tools: { bit: { shape: square, width: 2.4 mm, reach: 9 mm } }
features:
  - { kind: radius, shape: corner, corner-of: end, radius: 6 mm ±0.25 mm, tool: bit }
`

describe('a form stepped along with a dial that reads very finely', () => {
  it.each([
    ['inch', 'graduation: 0.00001, per-turn: 0.1, backlash: 0.005'],
    ['mm', 'readout: 0.001'],
  ] as const)('%s %s: is planned, and takes no more memory than another', (units, compound) => {
    const before = process.memoryUsage().rss
    expect(movesOf(corner(units, compound))).toBeLessThan(600)
    expect(process.memoryUsage().rss - before).toBeLessThan(150_000_000)
  })

  it('a mark finer than any slide can be set is refused with its place', () => {
    const { diagnostics, plan } = compile('job.yaml', () => ({
      ok: true,
      file: 'job.yaml',
      bytes: corner('mm', 'readout: 0.00001'),
    }))
    expect(plan).toBeNull()
    expect(diagnostics).toMatchObject([{ code: 'impossible', origin: { path: ['lathe', 'compound', 'readout'] } }])
  })
})

describe('an error that is stated', () => {
  const job = (key: string): string => `title: Press spindle
units: inch
part: { material: brass, held: chuck, diameter: 1.25, length: 2, overhang: 1.2 }
lathe:
  name: Village lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 3, reads: diameter, backlash: 0.2 }
  compound: { graduation: 0.01, per-turn: 0.5, backlash: 0.05, travel: 50 }
  spindle-speeds: [45, 70, 110, 180]
  ${key}
tools: { neck: { shape: square, width: 0.093, reach: 0.2 } }
features:
  - { kind: groove, name: Ring groove, near: 0.5, width: 0.120, bottom-diameter: 1.150, tool: neck }
`
  const read = (key: string) => compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: job(key) }))

  it.each([
    ['accuracy: { stock: 10000 }', ['lathe', 'accuracy', 'stock']],
    ['accuracy: { touch-off: 3.2 }', ['lathe', 'accuracy', 'touch-off']],
    ['instruments: { caliper: 4 }', ['lathe', 'instruments', 'caliper']],
  ])(
    '%s is more than any hand or eye makes: told with its place, before a table of meters is worked out',
    (key, path) => {
      const { diagnostics, plan } = read(key)
      expect(plan).toBeNull()
      expect(diagnostics).toMatchObject([{ code: 'impossible', origin: { path } }])
    },
  )

  it('a dial of more marks a turn than any has is refused with its place', () => {
    const text = job('').replace('graduation: 0.05, per-turn: 3,', 'graduation: 0.05, per-turn: 3000,')
    const { diagnostics, plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
    expect(plan).toBeNull()
    expect(diagnostics).toMatchObject([{ code: 'impossible', origin: { path: ['lathe', 'cross-feed', 'per-turn'] } }])
  })

  it('of an eighth of an inch is planned', () => {
    expect(read('accuracy: { stock: 3.175, touch-off: 3.175 }').diagnostics).toEqual([])
  })
})

describe('a V by flank feed with a narrow nose', () => {
  const vee = (nose: string): string => `title: Pulley of the pulp pump
units: inch
part: { material: cast iron, held: chuck, diameter: 3, length: 2.25, overhang: 1.75 }
lathe:
  name: Engine lathe
  cross-feed: { graduation: 0.001, per-turn: 0.2, reads: diameter, backlash: 0.014 }
  compound: { graduation: 0.001, per-turn: 0.125, backlash: 0.005, travel: 3.25 }
  spindle-speeds: [40, 62, 105, 150]
tools: { sheave: { shape: vee, angle: 38, nose: ${nose}, reach: 0.52 } }
features:
  - { kind: v-groove, name: Rope groove, method: flank-feed, angle: 38 ±1, depth: 0.375 ±0.006, root: 0.150 ±0.004, near: 0.6, tool: sheave }
`

  it.each(['0.010', '0.002', '0.000001'])('of %s is refused with the nose that will do, and that does', (nose) => {
    const { code, reason, remedy } = refusalOf(vee(nose))
    expect(code).toBe('nose-too-narrow')
    expect(reason).toMatch(/down the flank \d+ times beside each other, more than 12/)
    const wide = /grind the nose (\.\d+) wide/.exec(remedy)![1]!
    expect(movesOf(vee(wide))).toBeLessThan(400)
  })
})

describe('more moves than anybody makes', () => {
  it('places beside each other: refused with a width that does', () => {
    const tool = (width: string) => wideJob(2).replace('width: 0.032', `width: ${width}`)
    const { code, reason, remedy } = refusalOf(tool('0.001'))
    expect(code).toBe('too-many-moves')
    expect(reason).toContain(`more than ${MOST_MOVES} moves`)
    const apart = Number(/every (\.\d+)/.exec(remedy)![1])
    expect(movesOf(tool(String(apart / 0.9)))).toBeLessThanOrEqual(MOST_MOVES)
    expect(refusalOf(tool('0.000001')).code).toBe('too-many-moves')
  })

  it.each([
    ['groove', 'kind: groove, name: Recess, near: 1, width: 0.5, depth: 0.25, tool: bit'],
    ['V', 'kind: v-groove, name: Recess, near: 1, angle: 40, depth: 0.25, root: 0.02, tool: vee'],
    ['corner', 'kind: radius, shape: corner, corner-of: end, radius: 0.25, tool: corner'],
  ])('thin infeeds in a %s: never more than the most, however thin', (_, feature) => {
    const job = (infeed: string) =>
      wideJob(0.5)
        .replace(
          /bit: .*/,
          'bit: { shape: square, width: 0.1, reach: 0.6 }\n  vee: { shape: vee, angle: 40, nose: 0.02, reach: 0.6 }\n  corner: { shape: corner, radius: 0.25 }',
        )
        .replace(/ {2}- \{.*/, `  - { ${feature}, infeed: ${infeed} }`)
    for (const infeed of ['0.02', '0.001', '0.0001', '0.000001']) {
      const [one] = featuresOf(job(infeed))
      expect(one?.status === 'planned' ? one.operation.moves.length : 0).toBeLessThanOrEqual(MOST_MOVES)
      if (one?.status === 'refused') expect(one.code).toBe('too-many-moves')
    }
  })

  it('thin infeeds: refused with one that does', () => {
    const job = (infeed: number) =>
      groovesJob(1)
        .replace('graduation: 0.001', 'graduation: 0.0001')
        .replace('depth: 0.060 ±0.005', `depth: 0.250 ±0.005, infeed: ${infeed}`)
    const { code, remedy } = refusalOf(job(0.0001))
    expect(code).toBe('too-many-moves')
    expect(movesOf(job(Number(/infeed: (\.\d+)/.exec(remedy)![1])))).toBeLessThanOrEqual(MOST_MOVES)
  })
})
