import { describe, expect, it } from 'vitest'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'
import { runIn } from '../cli/world.ts'

/** What is legal and what nobody does twice in a life. Every one of them is planned, or refused with a remedy; what is planned is proved twice. */
type Extreme = {
  readonly units?: 'inch' | 'mm'
  readonly part?: string
  readonly crossFeed?: string
  readonly compound?: string
  readonly tools?: string
  readonly features: readonly string[]
}
const NECK = 'neck: { shape: square, width: 0.1, reach: 0.2 }'
const GROOVE = '{ kind: groove, name: Neck, near: 1, width: 0.12, depth: 0.05, tool: neck }'
const job = ({
  units = 'inch',
  part,
  crossFeed,
  compound,
  tools,
  features,
}: Extreme): string => `title: Extremes of the village
units: ${units}
part: ${part ?? '{ material: mild steel, held: chuck, diameter: 1.5, length: 5, overhang: 3 }'}
lathe:
  name: Village lathe
  units: ${units}
  cross-feed: { ${crossFeed ?? 'graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008'} }
  compound: { ${compound ?? 'graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5'} }
  spindle-speeds: [40, 70, 110, 180, 290, 540, 1200]
tools:
  ${tools ?? NECK}
features:
${features.map((feature) => `  - ${feature}`).join('\n')}
`

const EXTREMES: Readonly<Record<string, Extreme>> = {
  'features of a thousandth': {
    crossFeed: 'readout: 0.0001, reads: depth',
    compound: 'readout: 0.0001, travel: 2.5',
    tools:
      'tip: { shape: square, width: 0.001, reach: 0.01 }\n  point: { shape: vee, angle: 60, nose: 0.001, reach: 0.01 }',
    features: [
      '{ kind: groove, name: Scratch, near: 1, width: 0.001, depth: 0.001, tool: tip }',
      '{ kind: v-groove, name: Line, near: 2, angle: 60, depth: 0.001, root: 0.001, tool: point }',
    ],
  },
  'a bar of ten meters': {
    units: 'mm',
    part: '{ material: mild steel, held: between centers, dog: 30, diameter: 80, length: 10000 }',
    crossFeed: 'graduation: 0.02, per-turn: 4, reads: diameter, backlash: 0.2',
    compound: 'graduation: 0.02, per-turn: 4, backlash: 0.1, travel: 60',
    tools: 'neck: { shape: square, width: 4, reach: 6 }',
    features: ['{ kind: groove, name: Far groove, near: 9500, width: 5, depth: 2, tool: neck }'],
  },
  'dials of 12.7 mm a turn': {
    units: 'mm',
    part: '{ material: brass, held: chuck, diameter: 40, length: 100, overhang: 60 }',
    crossFeed: 'graduation: 0.1, per-turn: 12.7, reads: depth, backlash: 0.3',
    compound: 'graduation: 0.1, per-turn: 12.7, backlash: 0.3, travel: 60',
    tools: 'neck: { shape: square, width: 4, reach: 20 }',
    features: ['{ kind: groove, name: Deep groove, near: 20, width: 5, depth: 14, tool: neck }'],
  },
  'no lost motion at all': {
    crossFeed: 'graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0',
    compound: 'graduation: 0.001, per-turn: 0.100, backlash: 0, travel: 2.5',
    features: [GROOVE],
  },
  'lost motion of several turns': {
    crossFeed: 'graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.250',
    compound: 'graduation: 0.001, per-turn: 0.100, backlash: 0.220, travel: 2.5',
    features: [GROOVE],
  },
  'a V of 89.9 degrees': {
    tools: 'vee: { shape: vee, angle: 89.9, nose: 0.02, reach: 0.3 }',
    features: ['{ kind: v-groove, name: Open V, near: 1, angle: 89.9, depth: 0.1, root: 0.03, tool: vee }'],
  },
  'a compound at 89.9 degrees': {
    compound: 'graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5, angle: 89.9',
    features: ['{ kind: groove, name: Neck, near: 1, width: 0.1, depth: 0.05, tool: neck }'],
  },
  'a part of 200 steps': {
    part: `{ material: mild steel, held: chuck and center, overhang: 9.5, steps: [${Array.from({ length: 200 }, (_, i) => `{ name: s${i}, diameter: ${(1 + 0.004 * i).toFixed(3)}, length: 0.05 }`).join(', ')}] }`,
    tools: 'neck: { shape: square, width: 0.03, reach: 0.2 }',
    features: ['{ kind: groove, name: Neck, from: s100, near: 0.010, width: 0.03, depth: 0.02, tool: neck }'],
  },
  'forty features': {
    part: '{ material: mild steel, held: between centers, dog: 1, diameter: 2, length: 25 }',
    features: Array.from(
      { length: 40 },
      (_, i) => `{ kind: groove, name: Neck ${i}, near: ${0.5 + 0.5 * i}, width: 0.12, depth: 0.05, tool: neck }`,
    ),
  },
}

describe.each(Object.entries(EXTREMES))('%s', (_, extreme) => {
  it('is planned and proved, by the brute force and by its own table too', { timeout: 120_000 }, async () => {
    const files = { 'job.yaml': job(extreme) }
    const { status, out, err } = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'json')
    expect([status, err]).toEqual([0, ''])
    expect(bruteForce(JSON.parse(out) as Sheet).problems).toEqual([])
    const table = (await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')).out
    const replayed = await runIn({ files: { ...files, 'moves.csv': table } }, 'replay', 'job.yaml', 'moves.csv')
    expect([replayed.status, replayed.err]).toEqual([0, ''])
  })
})

it('a graduation that does not divide a turn is refused with its place', async () => {
  const extreme = { crossFeed: 'graduation: 0.003, per-turn: 0.100, reads: depth, backlash: 0.008', features: [GROOVE] }
  const { status, out, err } = await runIn({ files: { 'job.yaml': job(extreme) } }, 'sheet', 'job.yaml')
  expect([status, out]).toEqual([2, ''])
  expect(err).toMatch(/^job\.yaml:7:\d+: error: per-turn is 33\.333 graduations/)
})
