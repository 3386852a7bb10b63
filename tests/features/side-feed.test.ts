import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { words } from '../../src/phrase/words.ts'
import type { FeaturePlan, Plan } from '../../src/plan/plan.ts'
import { printJson } from '../../src/print/json/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { slipsFor } from '../../src/slips-for.ts'
import { INCH } from '../../src/units/length.ts'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'
import { told } from '../prose.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>
type Given = { carriage?: string; compound?: string; feature: string; part?: string; accuracy?: string }

const COARSE = '{ graduation: 0.010, per-turn: 0.800, backlash: 0.030 }'
const FINE = '{ graduation: 0.001, per-turn: 0.200, backlash: 0.018 }'
const INDICATOR = '{ indicator: 0.001, range: 1 }'

const jobText = ({ carriage, compound = 'angle: 0, travel: 2.5', feature, part, accuracy }: Given): string => `
title: Screw of the cider press
units: inch
part: ${part ?? '{ material: mild steel, held: chuck, overhang: 3, diameter: 1.5, length: 5 }'}
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, ${compound} }
${carriage === undefined ? '' : `  carriage: ${carriage}\n`}  spindle-speeds: [60, 95, 150, 240]
${accuracy === undefined ? '' : `  accuracy: ${accuracy}\n`}tools:
  neck: { shape: square, width: 0.148, reach: 0.14 }
  sheave: { shape: vee, angle: 38, nose: 0.150, reach: 0.3 }
  quarter: { shape: corner, radius: 1/8 }
  small: { shape: round, radius: 0.05, reach: 0.1 }
features:
  - { ${feature} }
`

const planOf = (given: Given): Plan => {
  const bytes = new TextEncoder().encode(jobText(given))
  const done = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes }))
  if (done.plan === null) throw new Error(JSON.stringify(done.diagnostics, null, 1))
  return done.plan
}
const featureOf = (plan: Plan): Planned => {
  const feature = plan.features[0]!
  if (feature.status !== 'planned') throw new Error(`${feature.code}: ${told(feature.reason)}`)
  return feature
}
const refusedOf = (given: Given) => {
  const feature = planOf(given).features[0]!
  if (feature.status !== 'refused') throw new Error('it is planned')
  return feature
}
const sheetOf = (plan: Plan): Sheet => JSON.parse(printJson(sheetFor(plan))) as Sheet
const textOf = (plan: Plan): string => printText(sheetFor(plan))
const budgetOf = (plan: Plan, id: string) => featureOf(plan).budget.find((one) => one.id === id)!
const inches = (length: number): number => length / INCH
const proven = (plan: Plan) => bruteForce(sheetOf(plan)).problems

const GROOVE = 'kind: groove, name: Relief, near: 1.125, width: 0.158, depth: 0.072, tool: neck'
const byCarriage = `${GROOVE}, side-feed: carriage`

describe('along the work by the dial of the carriage', () => {
  const plan = planOf({ carriage: COARSE, feature: byCarriage })

  it('rounds places to its marks: .010 on the dial for the .010 that the tool is undersize', () => {
    expect(inches(budgetOf(plan, 'width').planned)).toBeCloseTo(0.158, 9)
    expect(proven(plan)).toEqual([])
  })

  it('takes up its backlash, lets it go to move it, and holds it again before anything else cuts', () => {
    const { steps } = sheetOf(plan)
    const done = steps.filter(({ slide, action }) => slide === 'carriage' || action === 'lock' || action === 'unlock')
    expect(done.map(({ action, reading }) => (reading === undefined ? action : `${action} ${reading}`))).toEqual([
      ...['take-up null', 'lock', 'zero 0'],
      ...['unlock', 'move-carriage 0.01', 'lock'],
      ...['unlock', 'go-past -0.1', 'return 0', 'lock'],
      ...['unlock', 'feed-across 0.01', 'lock', 'unlock'],
    ])
  })

  it('says turns and marks of that dial', () => {
    const wide = `${byCarriage.replace('0.158', '1.008')}, walls: swept`
    const far = sheetOf(planOf({ carriage: COARSE, feature: wide }))
    const across = far.steps.find(({ action }) => action === 'feed-across')!
    expect([across.reading, across.turns, across.mark]).toEqual([0.86, 1, 6])
  })

  it('reckons with half a mark of that dial where it is read', () => {
    const { low, high, planned, worstCause } = budgetOf(plan, 'width')
    expect(worstCause).toBe('reading-carriage')
    expect(inches(high - planned)).toBeGreaterThan(0.0099)
    expect(inches(planned - low)).toBeGreaterThan(0.0049)
    const stated = planOf({ carriage: COARSE, feature: byCarriage, accuracy: '{ reading: 0.0005 }' })
    expect(inches(budgetOf(stated, 'width').high - planned)).toBeGreaterThan(0.0099)
  })

  it('warns of an undersize of .008 that its marks cannot show, and refuses only where a limit does not allow it', () => {
    const loose = planOf({ carriage: COARSE, feature: byCarriage.replace('0.158', '0.156') })
    expect(loose.warnings.map(({ code }) => code)).toContain('coarse-carriage')
    expect(inches(budgetOf(loose, 'width').planned)).toBeCloseTo(0.158, 9)
    const still = planOf({ carriage: COARSE, feature: byCarriage.replace('0.158', '0.152') })
    expect(still.warnings.map(({ code }) => code)).toContain('coarse-carriage')
    expect(inches(budgetOf(still, 'width').planned)).toBeCloseTo(0.148, 9)
    const held = planOf({ carriage: COARSE, feature: byCarriage.replace('0.158', '0.156 ±.002') })
    expect(budgetOf(held, 'width').verdict).toBe('may not hold')
    const refused = refusedOf({ carriage: COARSE, feature: byCarriage.replace('0.158', '0.156 ±.001') })
    expect(refused.code).toBe('no-reading')
    expect(told(refused.remedy)).toContain('an indicator on the carriage')
    expect(planOf({ carriage: FINE, feature: byCarriage.replace('0.158', '0.156') }).warnings).toEqual([])
  })

  it('has its own slips, each replayed: a shift forgotten, a turn too many, straight back through the backlash', () => {
    const [card] = slipsFor(plan)
    const told = card!.lines.map(({ shows, mistake }) => `${words(shows, 'inch')}: ${mistake}`)
    expect(told).toContain('width .010 narrow: the shift of the carriage was forgotten')
    expect(told).toContain('width .800 wide: one turn of the carriage too many')
    expect(told.find((one) => one.includes('the carriage was turned straight back'))).toContain('.010 wide')
  })

  it('cannot be zeroed against a shoulder that is touched going back', () => {
    const part =
      '{ material: mild steel, held: chuck, overhang: 3, steps: [{ name: head, diameter: 1.5, length: 1 }, { name: neck, diameter: 1.3, length: 4 }] }'
    const feature = `kind: groove, name: Neck, from: neck, near: 0, width: 0.178, depth: 0.02, tool: neck, side-feed: carriage`
    expect(refusedOf({ carriage: COARSE, part, feature }).code).toBe('side-feed')
    expect(proven(planOf({ carriage: INDICATOR, part, feature }))).toEqual([])
  })
})

describe('along the work by an indicator on the carriage', () => {
  it.each([29.5, 5.7333, 90, -30, 0])('leaves the compound at 0 when it is swung to %s degrees', (angle) => {
    const plan = planOf({ carriage: INDICATOR, compound: `angle: ${angle}, travel: 2.5`, feature: byCarriage })
    expect(proven(plan)).toEqual([])
    const { steps } = sheetOf(plan)
    const compound = steps.filter(({ slide }) => slide === 'compound')
    expect(compound.map(({ action, reading }) => [action, reading])).toEqual([
      ['take-up', null],
      ['zero', 0],
    ])
    expect(inches(budgetOf(plan, 'width').planned)).toBeCloseTo(0.158, 9)
    expect(inches(budgetOf(plan, 'flatness').planned)).toBeCloseTo(0, 9)
  })

  it('has no backlash to take up or to go past, and says what the indicator shows', () => {
    const plan = planOf({ carriage: INDICATOR, feature: byCarriage })
    expect(sheetOf(plan).steps.filter(({ action }) => action === 'go-past')).toEqual([])
    const text = textOf(plan)
    expect(text).toContain('INDICATOR  bears on the carriage, set it to 0')
    expect(text).toContain('CARRIAGE   toward the headstock until the indicator shows .010')
    expect(text).toContain('LOCK, then see that the indicator still shows .010')
    expect(textOf(planOf({ feature: GROOVE }))).not.toMatch(/indicator(?! along a true bar)/)
  })

  it('goes no further than its range', () => {
    const wide = byCarriage.replace('0.158', '1.148')
    expect(proven(planOf({ carriage: '{ indicator: 0.001, range: 1 }', feature: wide }))).toEqual([])
    const refused = refusedOf({ carriage: '{ indicator: 0.001, range: 0.999 }', feature: wide })
    expect(refused.code).toBe('beyond-travel')
    expect(told(refused.remedy)).toContain('side-feed: lines')
  })

  it('is what the refusals of a compound that cannot go along name as a remedy', () => {
    const across = refusedOf({ carriage: INDICATOR, compound: 'angle: 90, travel: 2.5', feature: GROOVE })
    expect([across.code, told(across.remedy)]).toEqual([
      'compound-across',
      expect.stringContaining('side-feed: carriage'),
    ])
    const short = refusedOf({ compound: 'angle: 0, travel: 0.2', feature: GROOVE.replace('0.158', '1') })
    expect([short.code, told(short.remedy)]).toEqual(['beyond-travel', expect.stringContaining('side-feed: carriage')])
  })
})

describe('to the scribed lines', () => {
  const VEE =
    'kind: v-groove, name: Belt, angle: 38, width: 0.380 ±0.020, root: 0.200, near: 1.125 ±0.015, tool: sheave'
  const lines = (feature: string, accuracy?: string) =>
    planOf({ feature: `${feature}, side-feed: lines`, ...(accuracy === undefined ? {} : { accuracy }) })

  it('meets the tailstock line, then the headstock line, and says each place from the free end in place of a reading', () => {
    const plan = lines(GROOVE.replace('0.158', '0.400 ±.020'))
    const { steps } = sheetOf(plan)
    const eye = steps.filter(({ slide }) => slide === 'carriage')
    expect(eye.every(({ reading, turns, mark }) => reading === null && turns === null && mark === null)).toBe(true)
    const across = eye.filter(({ action }) => action === 'feed-across').map(({ placeFromEnd }) => placeFromEnd)
    expect(across).toEqual([1.125, 1.377])
    expect(eye.filter(({ action }) => action === 'move-carriage').length).toBeGreaterThanOrEqual(3)
    expect(inches(budgetOf(plan, 'width').planned)).toBeCloseTo(0.4, 9)
    expect(proven(plan)).toEqual([])
  })

  it('is what the carriage means where it shows nothing', () => {
    const bare = planOf({ feature: `${VEE}, side-feed: carriage` })
    expect(featureOf(bare).operation.moves).toEqual(
      featureOf(lines(VEE)).operation.moves.map((move) => ({ ...move, origin: expect.anything() })),
    )
    const shown = planOf({ carriage: INDICATOR, feature: `${VEE}, side-feed: lines` })
    expect(sheetOf(shown).steps.some(({ placeFromEnd }) => placeFromEnd !== undefined)).toBe(true)
    expect(proven(shown)).toEqual([])
  })

  it('is off by the layout error at each line, and says which limits rest on that', () => {
    const plan = lines(VEE)
    const width = budgetOf(plan, 'width')
    expect(inches(width.high - width.planned)).toBeCloseTo(0.01, 6)
    expect(width.verdict).toBe('holds')
    expect(told(plan.warnings.find(({ code }) => code === 'rests-on-the-eye')!.say)).toMatch(
      /width .*in tolerance; near edge .*in tolerance/,
    )
    const poor = lines(VEE, '{ layout: 0.010 }')
    expect(budgetOf(poor, 'width').verdict).toBe('may not hold')
    expect(told(poor.warnings.find(({ code }) => code === 'rests-on-the-eye')!.say)).toContain('MAY MISS TOLERANCE')
  })

  it('brings the cut to the line, whatever the tool and the touch: they change the depth and the flat, not the width', () => {
    // Worked by hand: each line .005, so the width .010. The touch, the runout and half a mark go .001 + .001 + .0005 deeper; the flanks at
    // 19° meet the same lines, so the flat at the root is 2 x .0025 x tan 19° narrower, and .010 by the lines. The tool's .0005 is in neither.
    const accuracy =
      '{ layout: 0.005, touch-off: 0.001, runout: 0.001, reading: 0.0005, tool: 0.0005, stock: 0, tool-angle: 0, trued: 0 }'
    const vee = lines(VEE, accuracy)
    const off = (plan: Plan, id: string): number[] => {
      const { planned, low, high } = budgetOf(plan, id)
      return [planned - low, high - planned].map(inches)
    }
    const close = (plan: Plan, id: string, by: number): void =>
      off(plan, id).forEach((one) => {
        expect(one).toBeCloseTo(by, 6)
      })
    close(vee, 'width', 0.01)
    close(vee, 'near', 0.005)
    close(vee, 'depth', 0.0025)
    close(vee, 'root', 0.01 + 2 * 0.0025 * Math.tan((19 * Math.PI) / 180))
    const groove = lines(GROOVE.replace('0.158', '0.400 ±.020'), accuracy)
    close(groove, 'width', 0.01)
    close(groove, 'depth', 0.0025)
  })

  it('meets them with the compound square to the work, at places that are no whole millionths', () => {
    const feature = `${GROOVE.replace('0.158', '4.15 mm').replace('1.125', '29.3 mm')}, side-feed: lines`
    expect(proven(planOf({ compound: 'angle: 90, travel: 2.5', feature }))).toEqual([])
  })

  it('moves nothing by eye where the tool is as wide as the groove', () => {
    const plan = lines(GROOVE.replace('0.158', '0.148'))
    expect(sheetOf(plan).steps.filter(({ slide }) => slide === 'carriage')).toEqual([])
    expect(plan.warnings).toEqual([])
  })
})

describe('what the carriage cannot take', () => {
  it.each([
    ['kind: radius, shape: corner, corner-of: end, radius: 1/8, tool: quarter', 'side-feed'],
    ['kind: radius, shape: concave, radius: 0.15, width: 0.2, center: 1, tool: small', 'side-feed'],
  ])('refuses %s with a remedy', (feature, code) => {
    const refused = refusedOf({ carriage: INDICATOR, feature: `${feature}, side-feed: carriage` })
    expect(refused.code).toBe(code)
    expect(told(refused.remedy)).toContain('side-feed: compound')
  })
})

describe('the second replay, which reads only the sheet', () => {
  const sheet = sheetOf(planOf({ carriage: COARSE, feature: byCarriage }))
  const eye = sheetOf(planOf({ feature: `${GROOVE}, side-feed: lines` }))
  type Step = Sheet['steps'][number]
  const without = (of: Sheet, drop: (step: Step, index: number) => boolean): string =>
    bruteForce({ ...of, steps: of.steps.filter((step, index) => !drop(step, index)) }).problems.join()
  const last = (of: Sheet, action: string): number => of.steps.findLastIndex((step) => step.action === action)

  it.each([
    ['by the dial', sheet],
    ['by eye', eye],
  ])('sees a carriage that is moved while it is held, or let go while another slide cuts: %s', (_, of) => {
    expect(bruteForce(of).problems).toEqual([])
    const across = of.steps.findIndex(({ action }) => action === 'feed-across')
    expect(without(of, (_step, index) => index === across - 1)).toContain('the carriage moved while locked')
    const before = of.steps.findLastIndex(({ action }, index) => action === 'lock' && index < across)
    expect(without(of, (_step, index) => index === before)).toContain('while the carriage is not locked')
  })

  it('sees a place brought back without going past, and a place met wrong', () => {
    expect(without(sheet, ({ action }) => action === 'go-past')).toContain('depends on how much motion is lost')
    const at = last(eye, 'feed-across')
    const off = eye.steps.map((step, index) =>
      index === at ? { ...step, placeFromEnd: step.placeFromEnd! + 0.004 } : step,
    )
    const wide = bruteForce({ ...eye, steps: off }).features[0]!.runs[0]!
    expect(wide.width - bruteForce(eye).features[0]!.runs[0]!.width).toBeCloseTo(0.004, 3)
  })
})

describe('what the review of side feed found', () => {
  it('tells the marks of a metric carriage in the units of an inch job', () => {
    const metric = '{ graduation: 0.25 mm, per-turn: 20 mm, backlash: 0.5 mm }'
    const plan = planOf({ carriage: metric, feature: byCarriage.replace('0.158', '0.1515') })
    const [warning] = plan.warnings.filter(({ code }) => code === 'coarse-carriage')
    expect(told(warning!.say)).toContain("The marks of the carriage's dial are .0098 apart")
  })

  it('proposes a line met more closely where the width rests on the eye', () => {
    const lines = GROOVE.replace('0.158', '0.200 ±.008')
    const told = featureOf(planOf({ feature: `${lines}, side-feed: lines` }))
    expect(told.budget.find(({ id }) => id === 'width')!.verdict).toBe('may not hold')
    const gain = told.gains!.find(({ change }) => change.join() === 'layout')!
    const closer = planOf({ feature: `${lines}, side-feed: lines`, accuracy: '{ layout: 0.0025 }' })
    expect(gain.sizes).toEqual([budgetOf(closer, 'width')])
    expect(gain.holds).toBe(true)
  })
})
