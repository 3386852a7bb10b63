import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'

/** A remedy that names a key and its value was planned before it was told: whoever follows it is not refused again. */
const job = (part: string, lathe: string, tool: string, feature: string) => `title: Cider press shaft
units: inch
${part}
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, ${lathe}
  spindle-speeds: [60, 95, 150, 240]
tools: { own: { ${tool} } }
features:
  - { name: Groove, tool: own, ${feature} }
`
const featureOf = (text: string) => {
  const { plan, diagnostics } = compile('-', () => ({ ok: true, file: '-', bytes: text }))
  if (plan === null) throw new Error(diagnostics.map(({ message }) => message).join('; '))
  return plan.features[0]!
}
const remedyOf = (text: string): string => {
  const feature = featureOf(text)
  if (feature.status !== 'refused') throw new Error('it is planned')
  return told(feature.remedy)
}

/** The keys that a remedy names with a value, and the job with one of them set, or with all that stand joined by "and". */
const KEYS = /(?:edge-offset|cusp): [.\d]+|side-feed: (?:compound|carriage)|compound: \{ angle: 0 \}/g
const offersIn = (remedy: string): readonly (readonly string[])[] =>
  remedy.split(/, or |; else /).flatMap((part) => {
    const named = part.match(KEYS)
    return named === null ? [] : [named]
  })
const followed = (text: string, keys: readonly string[]): string =>
  keys.reduce((now, key) => {
    if (key.startsWith('edge-offset'))
      return now.replace(/(own: \{ [^}]*?)(?:, edge-offset: [.\d]+)?( \})/, `$1, ${key}$2`)
    const name = key.slice(0, key.indexOf(':'))
    const without = now.replace(new RegExp(`, ${name}: (?:\\{[^}]*\\}|[^,}]+)(?=[,}\\s])`), (all, at: number) =>
      at > now.indexOf('features:') ? '' : all,
    )
    return without.replace(/(Groove, tool: own, .*?)( \}\n)$/s, `$1, ${key}$2`)
  }, text)

const PLAIN = 'part: { material: mild steel, held: chuck, diameter: 1.500, length: 6 }'
const CENTERS = (dog: string) =>
  `part: { material: mild steel, held: between centers, dog: ${dog}, diameter: 1.500, length: 5 }`
const SQUARE = 'shape: square, width: 0.148, reach: 0.200'
const PARALLEL = 'travel: 2.5 }'
const CARRIAGE = `${PARALLEL}\n  carriage: { graduation: 0.005, per-turn: 0.800, backlash: 0.030 }`

const OFFERED: readonly (readonly [name: string, text: string, offers: number])[] = [
  [
    'a wide blank beside the dog',
    job(
      CENTERS('0.5'),
      PARALLEL,
      `${SQUARE}, blank: 0.375`,
      'kind: groove, far: 4.240, width: 0.165 ±0.005, depth: 0.050',
    ),
    1,
  ],
  [
    'a wide blank beside the jaws',
    job(
      'part: { material: mild steel, held: chuck, overhang: 3, diameter: 1.500, length: 5 }',
      PARALLEL,
      `${SQUARE}, blank: 0.375`,
      'kind: groove, far: 2.740, width: 0.165 ±0.005, depth: 0.050',
    ),
    1,
  ],
  [
    'a wide blank beside the center',
    job(
      CENTERS('0.5'),
      PARALLEL,
      `${SQUARE}, blank: 0.375`,
      'kind: groove, near: 0.020, width: 0.165 ±0.005, depth: 0.050',
    ),
    1,
  ],
  [
    'the compound square to the work',
    job(PLAIN, CARRIAGE, SQUARE, 'kind: groove, near: 1, width: 0.250 ±0.010, depth: 0.050, compound: { angle: 90 }'),
    2,
  ],
  [
    'the compound square to the work, and a carriage without a dial, by eye to the lines',
    job(PLAIN, PARALLEL, SQUARE, 'kind: groove, near: 1, width: 0.250, depth: 0.050, compound: { angle: 90 }'),
    2,
  ],
  [
    'a compound with too little travel',
    job(PLAIN, CARRIAGE.replace('2.5', '0.5'), SQUARE, 'kind: groove, near: 1, width: 1.500 ±0.020, depth: 0.050'),
    1,
  ],
  [
    'a round form stepped with the compound swung',
    job(
      PLAIN,
      PARALLEL,
      'shape: round, radius: 0.0625, reach: 0.2',
      'kind: radius, shape: concave, radius: 0.109, width: 0.180, center: 1.5, compound: { angle: 20 }',
    ),
    1,
  ],
  [
    'a ridge that takes too many places',
    job(
      PLAIN,
      PARALLEL,
      'shape: round, radius: 0.031, reach: 0.7',
      'kind: radius, shape: concave, radius: 0.500, width: 0.900, center: 1.5, cusp: 0.00002',
    ),
    1,
  ],
  [
    'a corner tool with the compound swung',
    job(
      PLAIN,
      PARALLEL,
      'shape: corner, radius: 0.125',
      'kind: radius, shape: corner, corner-of: end, radius: 0.125, compound: { angle: 30 }',
    ),
    1,
  ],
]

describe('a remedy that names a key and its value', () => {
  it.each(OFFERED)('is planned when it is followed: %s', (_, text, count) => {
    const offers = offersIn(remedyOf(text))
    expect(offers).toHaveLength(count)
    for (const keys of offers) {
      const changed = followed(text, keys)
      expect(changed).not.toBe(text)
      const feature = featureOf(changed)
      expect([keys, feature.status === 'refused' ? told(feature.reason) : feature.status]).toEqual([keys, 'planned'])
    }
  })

  it('is not told where it would be refused again: no side of the blank helps an edge that is itself too near the dog', () => {
    const remedy = remedyOf(
      job(CENTERS('0.5'), PARALLEL, `${SQUARE}, blank: 0.375`, 'kind: groove, far: 4.300, width: 0.165, depth: 0.050'),
    )
    expect(offersIn(remedy)).toEqual([])
    expect(remedy).toContain('turn the work end for end')
  })

  it('is not told to one whose blank is there already', () => {
    const beside = 'kind: groove, far: 4.255, width: 0.165, depth: 0.050'
    expect(
      offersIn(remedyOf(job(CENTERS('0.5'), PARALLEL, `${SQUARE}, blank: 0.375, edge-offset: 0.227`, beside))),
    ).toEqual([])
  })
})
