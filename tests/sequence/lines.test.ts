import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { INCH } from '../../src/units/length.ts'

/** A tool of .125 that overlaps by .025 needs a place each .100; roughing keeps the error of the eye, .005, from both lines. */
const job = (width: string): string => `title: Cider press pulley
units: inch
part: { material: mild steel, held: chuck and center, diameter: 1.5, length: 5, overhang: 4 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.010 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.010, travel: 3 }
  spindle-speeds: [100, 200, 400]
tools:
  neck: { shape: square, width: 0.125, reach: 0.2 }
cutting: { side-feed: lines, overlap: 0.025 }
features:
  - { kind: groove, name: Neck, near: 1, width: ${width} ±0.015, depth: 0.060 ±0.004, tool: neck }
`

const roughPlaces = (width: string): number[] => {
  const { plan } = compile('job.yaml', (file) => ({ ok: true, file, bytes: job(width) }))
  const feature = plan!.features[0]!
  if (feature.status !== 'planned') throw new Error(String(feature.reason))
  const { moves } = feature.operation
  const stop = moves.findIndex(({ action }) => action === 'measure')
  return moves
    .slice(0, stop)
    .flatMap(({ action, place }) => (action === 'move-carriage' ? [Number((place! / INCH).toFixed(4))] : []))
}

describe('the places to rough at between two scribed lines', () => {
  it.each([
    ['0.150', [1.005, 1.02]],
    ['0.235', [1.005, 1.105]],
    ['0.236', [1.005, 1.0555, 1.106]],
    ['0.335', [1.005, 1.105, 1.205]],
    ['0.345', [1.005, 1.075, 1.145, 1.215]],
  ])('of a width of %s are as few as the tool allows, evenly spread', (width, places) => {
    expect(roughPlaces(width)).toEqual(places)
  })
})

it.each([
  ['1.00000062', 1_000_001],
  ['1.00000038', 1_000_000],
])(
  'goes by the eye to a millionth of an inch, which inches and millimeters both show whole, the nearest to a line at %s',
  (near, millionths) => {
    const text = job('0.236').replace('near: 1,', `near: ${near},`).replace('overlap: 0.025', 'overlap: 0.0250013')
    const { plan } = compile('job.yaml', (file) => ({ ok: true, file, bytes: text }))
    const feature = plan!.features[0]!
    if (feature.status !== 'planned') throw new Error(String(feature.reason))
    const places = feature.operation.moves.flatMap(({ place }) => (place === undefined ? [] : [place]))
    expect(places.length).toBeGreaterThan(3)
    for (const place of places) expect(place % (INCH / 1e6)).toBe(0)
    // The lines themselves: the far one is .236 further, less the tool's own width of .125.
    expect(places).toContain((millionths * INCH) / 1e6)
    expect(places).toContain(((millionths + 111_000) * INCH) / 1e6)
  },
)

it('is brought once to the place of a groove hardly wider than its tool, whether something is left for a finish or nothing', () => {
  const brought = (leave: string): number => {
    const text = job('0.130').replace('overlap: 0.025', `overlap: 0.025, leave: ${leave}`)
    const { plan } = compile('job.yaml', (file) => ({ ok: true, file, bytes: text }))
    const feature = plan!.features[0]!
    if (feature.status !== 'planned') throw new Error(String(feature.reason))
    return feature.operation.moves.filter(({ action }) => action === 'move-carriage').length
  }
  expect(['0', '0.010'].map(brought)).toEqual([1, 1])
})
