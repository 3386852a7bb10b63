import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { words } from '../../src/phrase/words.ts'
import { shallowBy } from '../../src/sheet/fit-tool.ts'
import { inch } from '../replay/shop.ts'

const job = (features: string, units = 'inch', part = 'diameter: 0.500, length: 4, overhang: 1.5') => `
title: Tray-valve pin
units: ${units}
part: { material: mild steel, held: chuck, ${part} }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150]
tools:
  ring: { shape: square, width: 0.100 in, reach: 0.220 in }
  wide: { shape: square, width: 0.160 in, reach: 0.220 in }
  oil: { shape: round, radius: 0.060 in, reach: 0.150 in }
features:
${features}`

const GROOVE = '  - { kind: groove, name: Ring, near: 1 1/8, width: 0.105, depth: 0.200, tool: ring }\n'
const OIL = '  - { kind: radius, shape: concave, name: Oil, radius: 0.060, width: 0.100, center: 0.500, tool: oil }\n'

const stepsOf = (text: string) => {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
  expect(diagnostics).toEqual([])
  const sheet = sheetFor(plan!)
  return (action: string) =>
    sheet.steps
      .filter((step) => step.action === action)
      .map((step) => step.more.map((line) => words(line, sheet.units)))
}

describe('a tool off center', () => {
  it('cuts shallow by nearly h²/2 · (1/ρ − 1/R), high or low alike, by Pythagoras', () => {
    const [h, R, rho] = [inch(0.015), inch(0.25), inch(0.05)]
    const nearly = (h ** 2 / 2) * (1 / rho - 1 / R)
    // √(.25² − .015²) = .24955; less .2 = .04955; √(.04955² + .015²) = .05177; less .05 = .00177, where nearly gives .0018.
    expect(shallowBy(h, R, rho) / inch(1)).toBeCloseTo(0.00177, 5)
    expect(nearly / inch(1)).toBeCloseTo(0.0018, 6)
    expect(shallowBy(-h, R, rho)).toBe(shallowBy(h, R, rho))
    expect(shallowBy(0, R, rho)).toBe(0)
  })
  it('is told with what it costs at this bottom, and how it is seen once a sheet', () => {
    const [first, second] = stepsOf(job(OIL + GROOVE))('fit-tool')
    // R .25, ρ .05: √((√(.25² − .015²) − .2)² + .015²) − .05 = .00176; asin(.015/.05) = 17.5°
    expect(second).toContain(
      'off by .015 it cuts .0018 shallow; high rubs, low drags (about 17° of relief or rake gone)',
    )
    expect([...first!, ...second!].filter((line) => line.startsWith('a rule pinched'))).toHaveLength(1)
    expect(first!.some((line) => line.startsWith('square:'))).toBe(false)
    // .100 · tan 1°
    expect(second).toContain('square: the light even between edge and turned surface; 1° askew tapers the floor .0017')
  })
})

describe('lines to scribe', () => {
  it('are set by a rule where it has the fraction, else by calipers', () => {
    expect(stepsOf(job(GROOVE))('layout')).toEqual([
      [
        '1.125 from the free end: tailstock-side edge; 1 1/8 on a rule',
        '1.230 from the free end: headstock-side edge; calipers',
        'scribe with hermaphrodite calipers, the bent leg on the free end',
      ],
    ])
    const metric = '  - { kind: groove, name: Ring, near: 12.5, width: 2.7, depth: 1, tool: ring }\n'
    expect(stepsOf(job(metric, 'mm', 'diameter: 12, length: 100, overhang: 30'))('layout')[0]!.slice(0, 2)).toEqual([
      '12.50 from the free end: tailstock-side edge; on a rule',
      '15.20 from the free end: headstock-side edge; calipers',
    ])
  })
})

describe('a height gauge', () => {
  const SAID = 'or off the lathe, stood on its free end on a surface plate: height gauge'
  const part = 'diameter: 1, length: 4, overhang: 3'
  const saidFor = (held: string) => stepsOf(job(GROOVE, 'inch', part).replace('held: chuck', `held: ${held}`))('layout')
  it('is for work that comes out of its centers and goes back true, not for work in a chuck', () => {
    expect(saidFor('between centers')[0]).toContain(SAID)
    for (const held of ['chuck', 'collet', 'chuck and center']) expect(saidFor(held)[0]).not.toContain(SAID)
  })
})

describe('chatter', () => {
  it('is spoken of at the spindle only where it is likely', () => {
    const wide = '  - { kind: groove, name: Ring, near: 1, width: 0.165, depth: 0.020, tool: wide }\n'
    const rest = expect.stringMatching(/^at the bottom of a finish rest 3 turns of the work, \d s; roughing: never$/)
    expect(stepsOf(job(GROOVE))('set-speed')).toEqual([[rest]])
    expect(stepsOf(job(wide))('set-speed')).toEqual([[rest, 'chatter: less speed, MORE feed']])
  })
})

describe('the order of the set-up', () => {
  it('swings the compound first, since it carries the tool round with it', () => {
    const swung = GROOVE.replace(' }', ', compound: { angle: 10 } }')
    const corner = '  - { kind: radius, shape: corner, corner-of: end, radius: 0.060, tool: quarter }\n'
    const text = job(swung + OIL + corner).replace('  oil:', '  quarter: { shape: corner, radius: 0.060 in }\n  oil:')
    const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
    const steps = sheetFor(plan!).steps
    for (const feature of [0, 1, 2]) {
      const own = steps.filter((step) => step.feature === feature && step.purpose !== 'chamfer')
      const order = own.map(({ action }) => action)
      expect(order.slice(0, 4)).toEqual(['layout', 'swing', 'fit-tool', 'set-speed'])
    }
  })
})
