import { expect, it, test } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'

/** Roughing counts back from a shoulder here, so all places but the first are behind the zero of the compound. */
const job = `title: Pin of the cider press
units: inch
part:
  material: mild steel
  held: chuck
  overhang: 3
  steps: [{ name: tip, diameter: 1.000, length: 1.5 }, { name: body, diameter: 1.500, length: 3 }]
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  neck: { shape: square, width: 0.100, reach: 0.250 }
features:
  - { kind: groove, name: Relief, from: body, far: 0, width: 0.160, depth: 0.060, tool: neck, walls: plunged, leave-sides: 0 }
`

it('roughing leaves a mark on each wall that is to have a plunge of its own, on the way back from a shoulder too', () => {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: job }))
  const feature = plan?.features[0]
  if (feature?.status !== 'planned')
    throw new Error(feature === undefined ? JSON.stringify(diagnostics) : told(feature.reason))
  const { moves } = feature.operation
  const placesOf = (purpose: string) =>
    moves.flatMap((move, i) => {
      if (move.action !== 'feed-in' || move.purpose !== purpose) return []
      return [
        moves.slice(0, i).findLast(({ slide, count }) => slide === 'compound' && typeof count === 'number')?.count ?? 0,
      ]
    })
  const [rough, finish] = [placesOf('rough'), placesOf('finish')]
  expect([Math.min(...finish), Math.max(...finish)]).toEqual([-60, 0])
  expect([Math.min(...rough), Math.max(...rough)]).toEqual([-59, -1])
})

test.each<[string, boolean]>([
  ['0.160 ±0.0039', true],
  ['0.160 +0.0078 -0', true],
  ['0.160 ±0.004', false],
  ['0.160 ±0.010', false],
  ['0.160', false],
  ['4.06 mm ±0.09 mm', true],
  ['0.299', false],
  ['0.300', true],
])('a width of %s: the tool of .100 plunges each wall, %s', (width, plunged) => {
  const asked = job.replace('width: 0.160', `width: ${width}`).replace(', walls: plunged, leave-sides: 0', '')
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: asked }))
  const feature = plan?.features[0]
  if (feature?.status !== 'planned') throw new Error(JSON.stringify(feature ?? diagnostics))
  // Plunged, the floor is cleaned away from both walls, in two feeds across; swept, in one.
  expect(feature.operation.moves.filter(({ action }) => action === 'feed-across')).toHaveLength(plunged ? 2 : 1)
  expect(feature.operation.walls).toBe(plunged ? 'plunged' : undefined)
})

const movesOf = (asked: string) => {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: asked }))
  const feature = plan?.features[0]
  if (feature?.status !== 'planned') throw new Error(JSON.stringify(feature ?? diagnostics))
  return feature.operation.moves
}

// A compound that may have lost .0062 lags by 7 marks: from 2 · (7 + 5) marks between the walls, and one, two sweeps surely meet.
test.each([
  [0.124, 0],
  [0.125, 2],
])('a width of %f is fed across from both walls %i times', (width, sweeps) => {
  const asked = job
    .replace('width: 0.160', `width: ${width}`)
    .replace('0.100, backlash: 0.006', '0.100, backlash: 0.0062')
  expect(movesOf(asked).filter(({ action }) => action === 'feed-across')).toHaveLength(sweeps)
})

it('two marks between the walls are enough for roughing to leave one on each', () => {
  const moves = movesOf(job.replace('width: 0.160', 'width: 0.102'))
  const rough = moves.findIndex(({ purpose }) => purpose === 'rough')
  expect(moves.slice(0, rough).findLast(({ slide, count }) => slide === 'compound' && count != null)?.count).toBe(-1)
})

it('where nothing is roughed nothing is measured before the finish', () => {
  const purposes = movesOf(job.replace('depth: 0.060', 'depth: 0.060, leave: 0.060')).map(({ purpose }) => purpose)
  expect([purposes.includes('rough'), purposes.includes('expect-rough'), purposes.includes('expect-finish')]).toEqual([
    false,
    false,
    true,
  ])
})
