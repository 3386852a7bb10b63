import { expect, test } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'

const job = (across: string, along: string) => `title: Boss of the press plate
units: inch
part: { material: mild steel, held: chuck, overhang: 2, diameter: 1.000, length: 3 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: ${across}, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: ${along}, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  quarter: { shape: corner, radius: 1/8, blank: 3/8 }
features:
  - { kind: radius, shape: corner, corner-of: end, radius: 1/8, tool: quarter }
`

test.each([
  ['0.004', '0.0005'],
  ['0.0005', '0.004'],
])('around a corner with marks of %s across and %s along no dial is turned to where it is', (across, along) => {
  const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: job(across, along) }))
  const feature = plan!.features[0]!
  if (feature.status !== 'planned') throw new Error(told(feature.reason))
  const turned = (slide: string) =>
    feature.operation.moves.flatMap(({ purpose, slide: of, count }) =>
      purpose === 'alternate' && of === slide ? [Number(count)] : [],
    )
  const [inward, toward] = [turned('cross-feed'), turned('compound')]
  expect(Math.min(inward.length, toward.length)).toBeGreaterThan(2)
  for (const counts of [inward, toward]) expect(counts).toEqual([...new Set(counts)].sort((a, b) => a - b))
})
