import { describe, expect, it } from 'vitest'
import { bruteForce } from './brute-force.ts'
import { changed, cornerSheet, RISEN, RISEN_AT_FACE, squareSheet, veeSheet, without } from './hand-sheets.ts'
import type { Sheet } from './sheet-shape.ts'

const one = (sheet: Sheet) => {
  const found = bruteForce(sheet)
  return { ...found, form: found.features[0]!.runs[0]!, runs: found.features[0]!.runs }
}

describe('the brute-force replay on sheets worked out by hand', () => {
  it('cuts the square groove that the pencil says, for every amount of lost motion', () => {
    const { problems, form, runs } = one(squareSheet())
    expect(problems).toEqual([])
    expect(runs).toHaveLength(16)
    expect(Math.abs(form.width - 0.2)).toBeLessThanOrEqual(0.0005)
    expect(form.depth).toBeCloseTo(0.06, 9)
    expect(form.bottomDiameter).toBeCloseTo(1.13, 9)
    expect(Math.abs(form.near - 0.8)).toBeLessThanOrEqual(0.0005)
  })

  it('cuts the V with its width at the surface', () => {
    const { problems, form } = one(veeSheet())
    expect(problems).toEqual([])
    const wanted = 0.05 + 2 * 0.2 * Math.tan(Math.PI / 6)
    expect(Math.abs(form.width - wanted)).toBeLessThanOrEqual(0.0015)
    expect(form.depth).toBeCloseTo(0.2, 9)
  })

  it('rounds the corner and cuts nothing else', () => {
    const { problems, form } = one(cornerSheet())
    expect(problems).toEqual([])
    for (let i = 0; i < 300; i++) {
      const z = 0.0005 * (i + 0.381966)
      const beside = Math.max(0, 0.125 - z - RISEN_AT_FACE)
      const depth = Math.max(0, 0.125 - Math.sqrt(0.125 ** 2 - beside ** 2) - RISEN)
      expect(form.raw[i]! - form.profile[i]!).toBeCloseTo(depth, 9)
    }
  })
})

describe('the brute-force replay on sheets that were spoiled', () => {
  it('sees a compound brought back without going past', () => {
    const spoiled = without(squareSheet(), (step) => step.action === 'go-past')
    expect(one(spoiled).problems.join()).toContain('depends on how much motion is lost')
  })

  it('sees a back-out that clears only when no motion is lost', () => {
    const spoiled = changed(squareSheet(), (step) => (step.action === 'back-out' ? { reading: -0.004 } : null))
    expect(one(spoiled).problems.join()).toContain('not clear of the work')
  })

  it('sees a back-out left away before a shift', () => {
    const spoiled = without(squareSheet(), (step) => step.number === 12)
    expect(one(spoiled).problems.join()).toContain('cuts during a clear move')
  })

  it('sees a zero set with the backlash open, and one moved after the first cut', () => {
    const open = without(squareSheet(), (step) => step.action === 'take-up')
    expect(one(open).problems.join()).toContain('lost motion open')
    const late = squareSheet()
    late.steps.splice(14, 0, { ...late.steps[5]!, number: 99 })
    expect(one(late).problems.join()).toContain('fed before the last dial was set to zero')
  })

  it('sees a spindle that stands still, and hands beside one that turns', () => {
    expect(one(without(squareSheet(), (step) => step.action === 'start')).problems.join()).toContain(
      'spindle stands still',
    )
    expect(one(without(squareSheet(), (step) => step.action === 'stop')).problems.join()).toContain('spindle turning')
  })

  it('sees a reading between marks, and turns that say something else', () => {
    const between = changed(squareSheet(), (step) => (step.reading === 0.05 ? { reading: 0.0504 } : null))
    expect(one(between).problems.join()).toContain('not on a mark')
    const wrong = squareSheet()
    wrong.steps[10] = { ...wrong.steps[10]!, turns: 1 }
    expect(one(wrong).problems.join()).toContain('are not 0.05')
  })

  it('sees travel that the compound does not have, and an edge in too deep', () => {
    const short = squareSheet()
    short.lathe.compound.travel = 0.09
    expect(one(short).problems.join()).toContain('runs through')
    const shallow = squareSheet()
    shallow.features[0]!.edge!.reach = 0.055
    expect(one(shallow).problems.join()).toContain('deeper than its reach')
  })

  it('sees that a round tool brought back the wrong way is equal at both ends of the backlash and not between', () => {
    const sheet = without(squareSheet(), (step) => step.number > 10 && step.number < 23)
    sheet.features[0]!.edge = { shape: 'round', width: null, nose: null, angle: null, radius: 0.05, reach: 0.1 }
    sheet.features[0]!.placing!.point = 'tip'
    const moves = [
      ['feed-in', 'cross-feed', 0.03],
      ['back-out', 'cross-feed', -0.03],
      ['shift', 'compound', 0.006],
      ['feed-in', 'cross-feed', 0.03],
      ['back-out', 'cross-feed', -0.03],
      ['shift', 'compound', 0],
      ['feed-in', 'cross-feed', 0.03],
    ] as const
    const steps = moves.map(([action, slide, reading], at) => ({
      ...{ number: 11 + at, feature: 0, action, slide, reading },
      ...{ turns: reading < 0 ? -1 : 0, mark: (reading < 0 ? reading + 0.1 : reading) * 1000 },
    }))
    sheet.steps.splice(10, 0, ...steps)
    const { problems, runs } = one(sheet)
    expect(problems.join()).toContain('depends on how much motion is lost')
    const forms = runs.filter((run) => run.lost.crossFeed === 0)
    expect(forms.map((run) => run.differs)).toEqual([false, true, true, false])
  })
})
