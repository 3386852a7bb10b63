import { describe, expect, it } from 'vitest'
import { LATHE, runIn } from '../cli/world.ts'

type Written = {
  readonly units?: 'inch' | 'mm'
  readonly diameter?: string
  readonly measured?: string
  readonly length?: string
  readonly lathe?: string
  readonly groove?: string
}

const job = ({
  units = 'inch',
  diameter = '1.25',
  measured,
  length = '2',
  groove,
}: Written): string => `title: Press beam pin
units: ${units}
part:
  material: mild steel
  held: chuck and center
  steps:
    - { name: seat, diameter: ${diameter}, length: ${length}${measured === undefined ? '' : `, measured-diameter: ${measured}`} }
    - { name: head, diameter: ${units === 'mm' ? 40 : 1.75}, length: ${units === 'mm' ? 80 : 3} }
lathe: bench.yaml
tools:
  neck: { shape: square, width: 0.124 in, reach: 0.5 in, blank: 1/4 in }
features:
  - { kind: groove, name: Oil groove, ${groove ?? 'near: 1 in, width: 0.250 in ±0.010 in, depth: 0.050 in ±0.005 in'}, tool: neck }
`

const check = async (written: Written): Promise<{ status: number; said: string[] }> => {
  const files = { 'pin.yaml': job(written), 'bench.yaml': written.lathe ?? LATHE }
  const { status, err } = await runIn({ files }, 'check', 'pin.yaml')
  const lines = err.split('\n').filter((line) => /^\S+:\d+:\d+: |^ {2}remedy: /.test(line))
  return { status, said: lines.map((line) => line.replace(/^ {2}/, '')) }
}

describe('a measured diameter', () => {
  it('a little off what is drawn is nothing to ask about', async () => {
    // Turned undersize by some hundredths of an inch to clean it up.
    for (const measured of ['1.2495', '1.25', '1.22', '1.28', '1.19'])
      expect(await check({ measured })).toEqual({ status: 0, said: [] })
    expect(await check({ units: 'mm', diameter: '32', measured: '31.2', length: '50' })).toEqual({
      status: 0,
      said: [],
    })
  })

  it('off by more than a twentieth is questioned, with both values', async () => {
    // 1.25 x 1/20 = .0625, worked by hand.
    expect((await check({ measured: '1.187' })).said[0]).toBe(
      'pin.yaml:7:67: warning: The diameter measures 1.187, .063 under the 1.25 drawn',
    )
    expect(await check({ measured: '1.188' })).toEqual({ status: 0, said: [] })
    const { status, said } = await check({ units: 'mm', diameter: '32', measured: '34', length: '50' })
    expect(said).toEqual([
      'pin.yaml:7:66: warning: The diameter measures 34.00, 2.00 over the 32 drawn',
      'remedy: measure it again, or correct diameter',
    ])
    expect(status).toBe(0)
  })

  it('is questioned on the sheet too', async () => {
    const files = { 'pin.yaml': job({ measured: '1.4' }), 'bench.yaml': LATHE }
    const { out } = await runIn({ files }, 'sheet', 'pin.yaml')
    expect(out.replace(/\s+/g, ' ')).toContain(
      'The diameter measures 1.400, .150 over the 1.25 drawn: measure it again',
    )
  })

  it('outside the limits by little is nothing to ask about, and counts from them', async () => {
    expect((await check({ diameter: '1.25 +0.2 -0', measured: '1.5' })).said).toEqual([])
    expect((await check({ diameter: '1.25 +0.2 -0', measured: '1.52' })).said[0]).toContain(
      '.070 over the 1.25 +0.2 -0',
    )
  })

  // What is drawn and measured, and what was meant, whether 1.2485 in is 31.7119 mm worked by hand (x 25.4).
  const SLIPS = [
    ['a slipped point', { measured: '12.485' }, 'write 1.2485 if the point has slipped'],
    ['a slipped point the other way', { measured: '0.12485' }, 'write 1.2485 if the point has slipped'],
    ['millimeters', { measured: '31.7119' }, 'write 31.7119 mm if it was measured in millimeters'],
    [
      'inches',
      { units: 'mm', diameter: '31.75', measured: '1.2485', length: '50' },
      'write 1.2485 in if it was measured in inches',
    ],
    ['a radius', { measured: '0.6' }, 'write 1.200 if a radius was measured'],
  ] as const

  it.each(SLIPS)('that is %s is refused, with what mends it', async (_, written, remedy) => {
    const { status, said } = await check(written)
    expect(status).toBe(2)
    expect(said).toEqual([
      expect.stringMatching(/error: measured-diameter is \S+, and diameter is drawn \S+: one of the two is a slip$/),
      `remedy: ${remedy}, or correct diameter`,
    ])
    const meant = /write (.*) if/.exec(remedy)![1]!
    expect(await check({ ...written, measured: meant })).toEqual({ status: 0, said: [] })
  })

  it('that is like nothing is refused without a guess', async () => {
    const { status, said } = await check({ diameter: '0.1', measured: '2', groove: 'near: 1, width: 0.2, depth: 0.03' })
    expect(status).toBe(2)
    expect(said[0]).toContain('measured-diameter is 2.000, and diameter is drawn 0.1')
    expect(said[1]).toBe('remedy: measure it again, or correct diameter')
  })

  it('of a plain bar is asked about in the same words', async () => {
    const text = job({}).replace(/ {2}steps:\n.*\n.*\n/, '  diameter: 1.25\n  length: 5\n  measured-diameter: 12.5\n')
    const { status, err } = await runIn({ files: { 'pin.yaml': text, 'bench.yaml': LATHE } }, 'check', 'pin.yaml')
    expect(status).toBe(2)
    expect(err).toContain('pin.yaml:8:22: error: measured-diameter is 12.500, and diameter is drawn 1.25')
  })
})

describe('a backlash', () => {
  const lathe = (cross: string): string => LATHE.replace(/cross-feed: .*/, `cross-feed: ${cross}`)
  const worn = (backlash: string): string => lathe(`{ graduation: 0.001, per-turn: 0.100, backlash: ${backlash} }`)

  it('of a badly worn screw is taken as it is', async () => {
    expect((await check({ lathe: worn('0.060') })).status).toBe(0)
  })

  it('of more than a turn is questioned, of more than three refused', async () => {
    expect(await check({ lathe: worn('0.1') })).toEqual({ status: 0, said: [] })
    const { status, said } = await check({ lathe: worn('0.12') })
    expect(said).toEqual([
      'bench.yaml:3:61: warning: A backlash of .120 is 1.2 turns of a screw that moves .100 a turn',
      'remedy: give the lost motion in inches as this dial shows it, less than a turn',
    ])
    expect(status).toBe(0)
    expect((await check({ lathe: worn('0.301') })).status).toBe(2)
  })

  it('of many turns is refused, with the marks that were likely counted', async () => {
    const { status, said } = await check({ lathe: worn('14') })
    expect(status).toBe(2)
    expect(said).toEqual([
      'bench.yaml:3:61: error: a backlash of 14.000 is 140 turns of a screw that moves .100 a turn',
      'remedy: if 14 marks were counted, write 0.014; give the lost motion in inches as this dial shows it, less than a turn',
    ])
    expect((await check({ lathe: worn('0.014') })).status).toBe(0)
  })

  it('of thousandths that are no whole marks is asked about as thousandths', async () => {
    const { said } = await check({ lathe: worn('7.5') })
    expect(said[1]).toContain('remedy: if it is in thousandths, write 7.5 thou;')
    expect((await check({ lathe: worn('7.5 thou') })).status).toBe(0)
  })

  it('that is neither marks nor thousandths is asked about in plain words', async () => {
    const { said } = await check({ lathe: worn('0.35') })
    expect(said).toEqual([
      'bench.yaml:3:61: error: a backlash of .350 is 3.5 turns of a screw that moves .100 a turn',
      'remedy: give the lost motion in inches as this dial shows it, less than a turn',
    ])
  })

  it('is asked about on every dial, in its own units', async () => {
    const metric = LATHE.replace('units: inch', 'units: mm')
      .replace(/cross-feed: .*/, 'cross-feed: { graduation: 0.02, per-turn: 4, backlash: 0.2 }')
      .replace(/compound: .*/, 'compound: { graduation: 0.05, per-turn: 3, backlash: 12 }')
    const { said } = await check({ lathe: metric })
    expect(said).toEqual([
      expect.stringContaining('error: a backlash of 12.00 is 4 turns of a screw that moves 3.00 a turn'),
      expect.stringContaining('remedy: if 12 marks were counted, write 0.6;'),
    ])
  })
})

describe('a size of the part in other units', () => {
  it('out of keeping with the others is questioned: 40" among millimeters', async () => {
    const { status, said } = await check({ units: 'mm', diameter: '32', length: '40"' })
    expect(said).toEqual([
      'pin.yaml:7:43: warning: length is 40", which is 1016.00 mm; the largest other size of the part is 80.00 mm',
      'remedy: is the unit right? if it is 40.00 mm, write 40 without a unit',
    ])
    expect(status).toBe(0)
    expect(await check({ units: 'mm', diameter: '32', length: '40' })).toEqual({ status: 0, said: [] })
  })

  it('far too small is questioned: 2 mm among inches', async () => {
    const { said } = await check({
      diameter: '1.25',
      length: '2 mm',
      groove: 'from: head, near: 1, width: 0.25, depth: 0.05 ±0.005',
    })
    expect(said[0]).toContain(
      'warning: length is 2 mm, which is .07874 in; the smallest other size of the part is 1.250 in',
    )
  })

  it('in keeping with the others is only a size in other units', async () => {
    expect(await check({ length: '50 mm' })).toEqual({ status: 0, said: [] })
    expect(await check({ units: 'mm', diameter: '1.25 in', length: '2 in' })).toEqual({ status: 0, said: [] })
    // Half a meter of inch bar is ordinary; five hundred inches were never meant.
    expect(await check({ length: '500 mm' })).toEqual({ status: 0, said: [] })
  })
})
