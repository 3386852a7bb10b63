import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { INCH } from '../../src/units/length.ts'
import { bruteForce } from '../brute/brute-force.ts'
import { runIn } from '../cli/world.ts'

/** A corner of .250 at the free end, stepped around by a tool of .125 that is touched off over the cylinder, .250 to .750 from the end; and a groove cut before it. */
const job = (near: number, width: number): string => `title: Spindle of the cider press
units: inch
part: { material: mild steel, held: chuck, overhang: 2.5, diameter: 1.5, length: 3 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools: { own: { shape: square, width: 0.125, reach: 0.4 } }
features:
  - { kind: groove, name: Neck, near: ${near}, width: ${width}, depth: 0.05, tool: own, order: 1 }
  - { kind: radius, shape: corner, name: End, corner-of: end, radius: 0.25, tool: own, cusp: 0.004 }
`

const over = (near: number, width: number): readonly number[] => {
  const { plan } = compile('job.yaml', (file) => ({ ok: true, file, bytes: job(near, width) }))
  const feature = plan!.features.find(({ name }) => name === 'End')!
  if (feature.status !== 'planned') throw new Error(String(feature.reason))
  const { at } = feature.operation.touch
  if (at === null || !('over' in at.against)) throw new Error('touched elsewhere')
  return at.against.over.map((z) => Number((z / INCH).toFixed(4)))
}

// Half of the tool and .010 stay clear of the groove: .0725. Expected by plain sums.
it.each([
  [1.2, 0.14, [0.25, 0.75]],
  [0.6, 0.14, [0.25, 0.5275]],
  [0.3, 0.14, [0.5125, 0.75]],
])('a corner is touched off over the cylinder clear of a groove at %s', (near, width, stretch) => {
  expect(over(near, width)).toEqual(stretch)
})

it('is told where, and the outside replay finds the same zero all over it', async () => {
  const world = { files: { 'job.yaml': job(0.6, 0.14) } }
  expect((await runIn(world, 'sheet', 'job.yaml')).out).toMatch(
    /touches the cylinder, its\s+middle\s+by\s+carriage\s+between \.250 and \.520/,
  )
  const sheet = JSON.parse((await runIn(world, 'sheet', 'job.yaml', '--format', 'json')).out)
  expect(bruteForce(sheet).problems).toEqual([])
})
