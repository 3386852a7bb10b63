import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { sheetSchema } from '../../src/print/json/schema.ts'
import { PRINTERS } from '../../src/print/printers.ts'
import { groove, plan, readout, refused } from '../sheet/fixture.ts'
import { problems } from './conforms.ts'
import { examplePlans, exampleSheets } from './examples.ts'

const data = (over: Parameters<typeof plan>[0] = {}) => JSON.parse(PRINTERS.json(sheetFor(plan(over))))

describe('the sheet as data', () => {
  it('has the fixed fields, in the units of the sheet and of each dial', () => {
    const sheet = data({ features: [groove, refused] })
    expect(sheet).toMatchObject({
      format: 'groovewright.sheet/1',
      title: 'Cider press screw',
      units: 'inch',
      lathe: {
        crossFeed: {
          units: 'inch',
          graduation: 0.001,
          perTurn: 0.1,
          reads: 'depth',
          backlash: 0.008,
          readTo: 1,
          readout: false,
        },
        compound: { travel: 2.5 },
        carriage: null,
      },
    })
    expect(sheet.features[0]).toMatchObject({
      name: 'Thread-relief groove',
      kind: 'groove',
      tool: 'neck',
      status: 'planned',
      edge: {
        shape: 'square',
        width: 0.148,
        nose: null,
        angle: null,
        radius: null,
        reach: 0.125,
        rakeInUse: 0,
        measured: true,
      },
      compoundAngle: 0,
      surface: 1.5,
      spindle: { rpm: 95, wanted: 114.59 },
      zero: { fromEnd: 1.125, diameter: 1.5 },
      finished: {
        width: {
          planned: 0.156,
          low: 0.1545,
          high: 0.1575,
          rss: 0.0011,
          limits: [0.15125, 0.16125],
          verdict: 'holds',
          spare: 0.00325,
        },
        bottomDiameter: { verdict: 'may not hold', spare: -0.001, largestCause: 'touching off' },
        near: { limits: null, spare: null },
      },
    })
    expect(sheet.features[1]).toMatchObject({
      status: 'refused',
      refusal: { code: 'tool-too-wide', remedy: 'grind the tool to a radius of .094 at most' },
    })
    expect(sheet.features[1]).not.toHaveProperty('finished')
  })

  it('has readings on dial steps only', () => {
    const { steps } = data()
    expect(steps[0]).not.toHaveProperty('slide')
    expect(steps[0]).not.toHaveProperty('reading')
    expect(steps[3]).toMatchObject({ action: 'take-up', slide: 'compound', reading: null, turns: null, mark: null })
    expect(steps[9]).toMatchObject({
      number: 10,
      feature: 0,
      action: 'back-out',
      slide: 'cross-feed',
      reading: -0.05,
      turns: -1,
      mark: 50,
    })
    expect(steps[11].say).toBe('CROSS-FEED in past 0, to 52; .052 deep, 1.396 dia')
  })

  it('has no turns and no marks on a readout', () => {
    const sheet = data({ lathe: { ...plan().lathe, crossFeed: readout } })
    expect(sheet.lathe.crossFeed).toMatchObject({ readout: true, graduation: 0.0005, perTurn: null, backlash: 0 })
    expect(sheet.steps[11]).toMatchObject({ reading: 0.026, turns: null, mark: null })
  })

  it.each(exampleSheets())('%s fits its schema, and is the same every time', (_, sheet) => {
    const printed = PRINTERS.json(sheet)
    expect(problems(sheetSchema(), JSON.parse(printed))).toEqual([])
    expect(PRINTERS.json(sheet)).toBe(printed)
  })

  it.each(examplePlans())('%s puts every reading together from turns and mark', (_, planned) => {
    const sheet = JSON.parse(PRINTERS.json(sheetFor(planned)))
    const moves = planned.features.flatMap((feature) => (feature.status === 'planned' ? feature.operation.moves : []))
    expect(sheet.steps).toHaveLength(moves.length)
    for (const step of sheet.steps) {
      const dial = step.slide === 'cross-feed' ? sheet.lathe.crossFeed : sheet.lathe.compound
      if (typeof step.mark !== 'number') continue
      expect(step.turns * dial.perTurn + step.mark * dial.graduation).toBeCloseTo(step.reading, 9)
      expect(step.mark / dial.readTo).toBe(Math.round(step.mark / dial.readTo))
      expect(step.mark * dial.graduation).toBeLessThan(dial.perTurn)
    }
  })
})

describe('the schema of the sheet', () => {
  it('is the one that is shipped', () => {
    expect(`${JSON.stringify(sheetSchema(), null, 2)}\n`).toBe(
      readFileSync('examples/schema/sheet.schema.json', 'utf8'),
    )
  })

  it('refuses what is no sheet', () => {
    expect(problems(sheetSchema(), { ...data(), units: 'furlong' })).toEqual(['$.units: furlong is not listed'])
    expect(problems(sheetSchema(), { ...data(), steps: [{}] })).toContain('$.steps[0].say: missing')
  })
})
