import { describe, expect, it } from 'vitest'
import { starter } from '../../src/cli/starters.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { change, JOB, LATHE, read, readGood, SHOP, said } from './reading.ts'

describe('a job in inches with included lathe and toolbox', () => {
  const job = readGood(SHOP)

  it('reads every length exactly', () => {
    expect(job.part.steps.map((step) => [step.name, step.diameter.nominal, step.measured, step.length])).toEqual([
      ['pilot', 0.875 * INCH, 0.875 * INCH, 2 * INCH],
      ['body', 1.5 * INCH, 38_061_900_000, 3 * INCH],
    ])
    expect(job.part).toMatchObject({ overhang: 4 * INCH, overhangGiven: true, held: 'chuck' })
    expect(job.features[0]).toMatchObject({
      kind: 'groove',
      index: 0,
      name: 'Thread relief',
      place: { by: 'near', from: 'end', distance: { nominal: 28_575_000_000 } },
      width: { nominal: 3_968_750_000, limits: [3_841_750_000, 4_095_750_000], text: '5/32 ±0.005' },
      depth: { nominal: 1_778_000_000, limits: [1_778_000_000, 1_879_600_000], aim: 1_828_800_000 },
      bottomDiameter: null,
      cornerRadius: { nominal: 254_000_000, limits: [0, 254_000_000], aim: 254_000_000, text: '0.010 max' },
      tool: 'neck',
    })
  })

  it('names features that have no name, counted by kind', () => {
    expect(job.features.map((feature) => feature.name)).toEqual(['Thread relief', 'Radius 1', 'Radius 2', 'V-groove 1'])
  })

  it('keeps where everything stands, by file', () => {
    expect(job.features[3]?.origin).toEqual({ file: 'job.yaml', path: ['features', 3] })
    expect(job.tools.neck?.origin).toEqual({ file: 'toolbox.yaml', path: ['neck'] })
  })

  it('fills in the defaults of an inch lathe', () => {
    expect(job.lathe).toMatchObject({ jawClearance: INCH / 4, carriage: { graduation: INCH / 100, reads: 'depth' } })
    expect(job.lathe.crossFeed).toMatchObject({ kind: 'dial', readTo: 1, backlash: 203_200_000 })
    expect(job.lathe.compound).toMatchObject({ angle: 0, travel: 2.5 * INCH, scaleZero: 'parallel' })
    expect(job.lathe.accuracy).toEqual({
      reading: null,
      touchOff: 25_400_000,
      layout: 127_000_000,
      tool: 12_700_000,
      stock: 12_700_000,
      runout: 0,
      swivel: 1 / 2,
      trued: 1 / 20,
      toolAngle: 1 / 2,
    })
  })

  it('takes the cutting speed from the table, with its source', () => {
    expect(job.part.material).toMatchObject({ name: 'mild steel', cuttingSpeed: 90, speedUnits: 'ft/min' })
    expect(job.part.material.source).toContain('chart')
  })

  it('adds the tilt of the holder to the ground rake, and gives a corner tool its radius as reach', () => {
    expect(job.tools.neck).toMatchObject({
      rakeInUse: 14.5,
      holderAngle: 14.5,
      bit: 'hss',
      measured: true,
      cornerRadius: 0,
    })
    expect(job.tools.quarter).toMatchObject({ reach: INCH / 8, radius: INCH / 8 })
  })
})

describe('units', () => {
  const metricJob = JOB.replace('units: inch', 'units: mm')
    .replace('diameter: 0.875, length: 2', 'diameter: 20 h11, length: 50')
    .replace('diameter: 1.500, length: 3, measured-diameter: 1.4985', 'diameter: 40, length: 80')
    .replace('overhang: 4', 'overhang: 100')

  it('reads a lathe in its own units and a toolbox in those of the job', () => {
    const toolbox = 'neck: { shape: square, width: 4, reach: 0.2 in }\n'
    const job = readGood({ 'job.yaml': metricJob, 'lathe.yaml': LATHE, 'toolbox.yaml': toolbox })
    expect(job.lathe.crossFeed).toMatchObject({ units: 'inch', graduation: 25_400_000 })
    expect(job.tools.neck).toMatchObject({ width: { nominal: 4 * MM }, reach: 5_080_000_000 })
    expect(job.part.steps[0]?.diameter).toMatchObject({ nominal: 20 * MM, limits: [19_870_000_000, 20 * MM] })
    expect(job.part.steps[0]?.measured).toBe(19_935_000_000)
    expect(job.part.material).toMatchObject({ cuttingSpeed: 27, speedUnits: 'm/min' })
  })

  it('reads a toolbox in its own units where it names them', () => {
    const job = readGood({
      ...SHOP,
      'job.yaml': metricJob,
      'toolbox.yaml': 'units: inch\nneck: { shape: square, width: 1/8, reach: 1/4 }\n',
    })
    expect(Object.keys(job.tools)).toEqual(['neck'])
    expect(job.tools.neck).toMatchObject({ width: { nominal: INCH / 8 } })
  })

  it('gives a lathe in millimeters its defaults in millimeters, under a job in inches', () => {
    const lathe =
      'name: Small lathe\nunits: mm\ncross-feed: { graduation: 0.02, per-turn: 2, reads: diameter, backlash: 0.1, read-to: 1/2 }\ncompound: { readout: 0.005 }\nspindle-speeds: [500, 100, 250]\n'
    const job = readGood({ ...SHOP, 'lathe.yaml': lathe })
    expect(job.lathe).toMatchObject({
      units: 'mm',
      jawClearance: 6 * MM,
      spindleSpeeds: [100, 250, 500],
      carriage: null,
    })
    expect(job.lathe.crossFeed).toMatchObject({ graduation: 20_000_000, reads: 'diameter', readTo: 0.5 })
    expect(job.lathe.compound.scale).toEqual({ kind: 'readout', units: 'mm', resolution: 5_000_000, reads: 'depth' })
    expect(job.lathe.accuracy).toMatchObject({
      touchOff: 20_000_000,
      layout: 100_000_000,
      tool: 10_000_000,
      stock: 10_000_000,
    })
  })

  it('reads an inline lathe in the units of the job', () => {
    const inline = LATHE.replace('units: inch\n', '').trimEnd().replaceAll('\n', '\n  ')
    const job = readGood(change('job.yaml', 'lathe: lathe.yaml', `lathe:\n  ${inline}`))
    expect(job.lathe).toMatchObject({ units: 'inch', crossFeed: { graduation: 25_400_000 } })
  })
})

describe('shorter ways', () => {
  it('takes a plain bar as one step called body, wholly out of the chuck', () => {
    const steps = JOB.slice(JOB.indexOf('  overhang'), JOB.indexOf('lathe:'))
    const job = readGood(change('job.yaml', steps, '  diameter: 1 1/2\n  length: 5\n  measured-diameter: 1.499\n'))
    expect(job.part).toMatchObject({ overhang: 5 * INCH, overhangGiven: false })
    expect(job.part.steps).toMatchObject([
      { name: 'body', measured: 38_074_600_000, measuredGiven: true, length: 5 * INCH },
    ])
  })

  it('takes a material with its own cutting speed, and one named by a number', () => {
    const own = readGood(change('job.yaml', 'mild steel', '{ name: yew, cutting-speed: 300 }'))
    expect(own.part.material).toEqual({
      name: 'yew',
      cuttingSpeed: 300,
      speedUnits: 'ft/min',
      source: 'given in the job',
    })
    expect(readGood(change('job.yaml', 'mild steel', '1018')).part.material.name).toBe('mild steel')
  })

  it('plans without a toolbox', () => {
    const job = readGood({
      ...SHOP,
      'job.yaml': JOB.replace('tools: toolbox.yaml\n', '').replace('    tool: neck\n', ''),
    })
    expect(job.tools).toEqual({})
    expect(job.features[0]?.tool).toBeNull()
  })

  it('puts cutting keys of a feature over those of the job, beside its keys or gathered', () => {
    const shared = change(
      'job.yaml',
      'features:\n',
      'cutting: { leave: 0.010, infeed: 0.030, side-feed: carriage }\nfeatures:\n',
    )
    const own = change(
      'job.yaml',
      '    tool: neck\n',
      "    tool: neck\n    leave: 12 thou\n    cutting: { clear: 0.05, compound: { angle: 84° 16' } }\n",
      shared,
    )
    const job = readGood(own)
    expect(job.features[0]?.cutting).toMatchObject({
      leave: 304_800_000,
      infeed: 762_000_000,
      clear: 1_270_000_000,
      sideFeed: 'carriage',
      leaveSides: null,
      order: null,
    })
    expect(job.features[0]?.cutting.compoundAngle).toBeCloseTo(84.2667, 4)
    expect(job.features[1]?.cutting).toMatchObject({ leave: 254_000_000, clear: null, compoundAngle: null })
  })

  it('takes distances from a step that are zero or negative', () => {
    const job = readGood(change('job.yaml', '    near: 1.125\n', '    from: body\n    far: -0.010\n'))
    expect(job.features[0]).toMatchObject({ place: { by: 'far', from: 'body', distance: { nominal: -254_000_000 } } })
  })
})

describe('starters', () => {
  it('has a job that works as it is and begins with the line for editors', () => {
    expect(starter('job')).toMatch(/^# yaml-language-server: \$schema=job\.schema\.json\n/)
    const job = readGood({ 'job.yaml': starter('job') })
    expect(job.features.map((feature) => feature.kind)).toEqual(['groove', 'radius', 'radius', 'v-groove'])
    expect(Object.keys(job.tools)).toEqual(['neck', 'oil', 'quarter', 'sheave'])
  })

  it('has a lathe and a toolbox that work with any job', () => {
    const shop = { ...SHOP, 'lathe.yaml': starter('lathe'), 'toolbox.yaml': starter('toolbox') }
    expect(said(read(shop))).toEqual([])
    expect(readGood(shop).lathe.accuracy.touchOff).toBe(readGood(SHOP).lathe.accuracy.touchOff)
    expect(readGood(shop).tools.neck).toMatchObject({ rakeInUse: 14.5 })
  })
})
