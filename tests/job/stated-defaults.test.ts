import { describe, expect, it } from 'vitest'
import { FREE_NAME, keysOf } from '../../src/job/keys.ts'
import { runIn } from '../cli/world.ts'

/** What is said to hold where a key is left out, written into the file: the sheet must not change. Another value must change it. */
const ofKeys = keysOf('job').filter(({ byDefault }) => byDefault !== null)
const path = ({ paths }: { readonly paths: readonly string[] }): string => paths.at(-1)!

/** Defaults that are no single value: how the sheet plans without them is what the other tests are about. */
const IN_PROSE = [
  'part.dog',
  'part.overhang',
  'part.steps.measured-diameter',
  'part.measured-diameter',
  'lathe.units',
  'part.grip',
  'lathe.carriage',
  'lathe.accuracy',
  'lathe.instruments',
  'lathe.instruments.missing',
  'lathe.accuracy.reading',
  'lathe.compound.travel',
  'tools',
  'tools.units',
  'tools.<name>.edge-offset',
  'tools.<name>.rake-in-use',
  'tools.<name>.angle-within',
  'tools.<name>.edge-width',
  'tools.<name>.leg-on-face',
  'tools.<name>.reach',
  'cutting',
  'features.cutting',
  'features.leave',
  'features.infeed',
  'features.peck',
  'features.walls',
  'lathe.cross-feed.stop',
  'features.overlap',
  'features.compound',
  'features.order',
  'features.name',
  'features.tool',
  'features.corner-radius',
  'features.width-at',
  'features.rough-tool',
]

describe.each(['inch', 'mm'] as const)('a default stated in %s', (units) => {
  it.each(inValues(units).map((key) => [path(key), key] as const))(
    'is what holds without the key: %s',
    async (at, key) => {
      const stated = statedIn(key.byDefault!, units)
      let changed = false
      for (const job of jobsIn(units).filter((each) => fits(each, at, key.only))) {
        const without = await sheet(job)
        expect(await sheet(withKey(job, at, stated))).toEqual(without)
        const other = key.words.find((word) => word !== stated) ?? OTHERS[at] ?? key.example
        changed ||= (await sheet(withKey(job, at, other))) !== without
      }
      expect(changed).toBe(true)
    },
  )
})

it('is tried for every key whose default is a value', () => {
  const inProse = ofKeys.filter(({ byDefault }) => statedIn(byDefault!, 'inch') === undefined).map(path)
  expect([...new Set(inProse)].sort()).toEqual([...IN_PROSE].sort())
})

/** A default that is the same in both units is tried in one. */
const inValues = (units: 'inch' | 'mm'): typeof ofKeys =>
  ofKeys.filter((key) => !IN_PROSE.includes(path(key)) && (units === 'inch' || / mm\)/.test(key.byDefault!)))

const statedIn = (says: string, units: 'inch' | 'mm'): string | number | undefined => {
  const [first = ''] = says.split(/[;,] /)
  const lengths = /^([\d./]+ in) \(([\d.]+ mm)\)$/.exec(first)
  if (lengths) return units === 'inch' ? lengths[1] : lengths[2]
  if (/^half a degree$/.test(first)) return 1 / 2
  const number = /^([\d.]+)(?: degrees)?$/.exec(first)
  if (number) return Number(number[1])
  return /^[a-z-]+$/.test(first) ? first : undefined
}

type Mapping = { [key: string]: unknown }

/** Sheets of the jobs without a key more, which are wanted again and again. */
const printed = new Map<string, string>()

const sheet = async (job: Mapping): Promise<string> => {
  const stdin = JSON.stringify(job)
  const kept = printed.get(stdin)
  if (kept !== undefined) return kept
  const { out, err } = await runIn({ stdin }, 'sheet', '--format', 'json', '-')
  printed.set(stdin, out + err)
  return out + err
}

/** The job with one key more; a list is entered at its first entry, and a name of the file is that of its only tool. */
const withKey = (job: Mapping, at: string, value: unknown): Mapping => {
  const copy = JSON.parse(JSON.stringify(job)) as Mapping
  const names = at.split('.')
  const last = names.pop()!
  const into = names.reduce<Mapping>((here, name) => {
    const inner = name === FREE_NAME ? Object.values(here)[0] : here[name]
    return (Array.isArray(inner) ? inner[0] : inner) as Mapping
  }, copy)
  into[last] = value
  return copy
}

/** A groove by its tool, a groove with a tool to be ground, a V with the compound swung for it, and a round form that is stepped along. */
const jobsIn = (units: 'inch' | 'mm'): Mapping[] => {
  const size = (inch: number): number => (units === 'inch' ? inch : Math.round(inch * 25 * 100) / 100)
  const dial = units === 'inch' ? [0.001, 0.1, 0.006] : [0.02, 2, 0.16]
  const scale = { graduation: dial[0], 'per-turn': dial[1], backlash: dial[2] }
  const job = (feature: Mapping, tool: Mapping | null): Mapping => ({
    title: 'Press screw',
    units,
    part: { material: 'mild steel', steps: STEPS.map((step) => sized(step, size)), overhang: size(3) },
    lathe: {
      name: 'Bench lathe',
      'cross-feed': scale,
      compound: scale,
      carriage: scale,
      accuracy: {},
      instruments: {},
      'spindle-speeds': [60, 95, 150, 240, 380],
    },
    ...(tool ? { tools: { one: sized(tool, size) } } : {}),
    features: [sized({ ...feature, ...(tool ? { tool: 'one' } : {}) }, size)],
  })
  const groove = { kind: 'groove', near: 0.5, width: 0.2, depth: 0.08 }
  return [
    job(groove, { shape: 'square', width: 0.148, reach: 0.2, blank: 0.375 }),
    job({ ...groove, near: 2.5, width: 0.12 }, null),
    job(
      { kind: 'v-groove', near: 0.5, width: 0.3, root: 0.1, angle: 38, compound: { angle: 30 } },
      { shape: 'vee', angle: 38, nose: 0.1, reach: 0.5 },
    ),
    job(
      { kind: 'v-groove', near: 0.5, width: 0.3, root: 0.1, angle: 38, method: 'flank-feed' },
      { shape: 'vee', angle: 38, nose: 0.1, reach: 0.5 },
    ),
    job(
      { kind: 'radius', shape: 'concave', center: 0.5, radius: 0.25, depth: 0.08 },
      { shape: 'round', radius: 0.1, reach: 0.2 },
    ),
  ]
}

const STEPS = [
  { name: 'pilot', diameter: 1, length: 2 },
  { name: 'body', diameter: 1.5, length: 2 },
]

const sized = (mapping: Mapping, size: (inch: number) => number): Mapping =>
  Object.fromEntries(
    Object.entries(mapping).map(([key, value]) => [
      key,
      typeof value === 'number' && key !== 'angle' ? size(value) : value,
    ]),
  )

/** Whether the job has the kind of feature or the shape of tool that the key is for; a V leaves something on its walls where a groove does not. */
const fits = (job: Mapping, at: string, only: readonly string[]): boolean => {
  const [feature] = job.features as Mapping[]
  const tool = job.tools ? Object.values(job.tools)[0] : undefined
  if (at.startsWith('tools.') && !tool) return false
  // A job that has the key already does not do without it.
  if (at === 'features.method' && feature!.method !== undefined) return false
  if (at === 'features.leave-sides' && feature!.kind === 'v-groove') return false
  if (!at.startsWith('lathe.instruments.') && (at === 'features.cusp') !== (feature!.kind === 'radius')) return false
  const kind = [feature!.kind, feature!.shape].filter(Boolean).join(' ')
  return only.length === 0 || only.includes(at.startsWith('tools.') ? tool?.shape : kind)
}

/** Other values than the example of the key, where that would plan nothing else here. */
const OTHERS: Readonly<Record<string, unknown>> = {
  'features.leave-sides': '0.01 in',
  'features.flank-under': 1,
  'lathe.widest-edge': '0.01 in',
  'lathe.instruments.inside-caliper': '0.0002 in',
}
