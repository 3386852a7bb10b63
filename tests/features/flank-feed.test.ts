import { describe, expect, it } from 'vitest'
import { bruteForce } from '../brute/brute-force.ts'
import { formProblems, sizeProblems } from '../brute/expected.ts'
import type { Sheet, SheetStep } from '../brute/sheet-shape.ts'
import type { DrawnVee } from '../properties/drawn.ts'
import { sheetOf } from '../properties/examine.ts'

const HALF = 19
const radians = (HALF * Math.PI) / 180
const [slope, into, along] = [Math.tan(radians), Math.cos(radians), Math.sin(radians)]

/** A V of 38 degrees, 0.300 deep with a flat root of 0.120, on a lathe whose compound scale starts at square. */
const job = (nose: number, keys: readonly string[] = [], scaleZero = 'square') => `
title: Spare pulley
units: inch
part: { material: cast iron, held: chuck, diameter: 2.5, length: 2, overhang: 1.75 }
lathe:
  name: Shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.1, reads: depth, backlash: 0.011 }
  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.007, travel: 2, scale-zero: ${scaleZero} }
  spindle-speeds: [40, 80]
tools:
  bit: { shape: vee, angle: 38, nose: ${nose}, reach: 0.4 }
features:
  - kind: v-groove
    name: Cord groove
    angle: 38
    depth: 0.300
    root: 0.120
    near: 0.6
    tool: bit
${keys.map((key) => `    ${key}\n`).join('')}`

const drawn: DrawnVee = {
  name: 'Cord groove',
  nominal: 2.5,
  measured: 2.5,
  cusp: null,
  side: 'compound',
  kind: 'vee',
  near: 0.6,
  slope,
  width: 0.12 + 2 * 0.3 * slope,
  depth: 0.3,
  root: 0.12,
  holds: 'both',
}

function sheet(text: string): Sheet {
  const made = sheetOf(text)
  if (!made.ok) throw new Error(made.problems.join('\n'))
  return made.sheet
}

/** Everything that the second replay holds against a sheet. */
function problems(made: Sheet): string[] {
  const brute = bruteForce(made)
  const one = brute.features[0]!
  return [...brute.problems, ...formProblems(made, one, drawn), ...sizeProblems(made, one)]
}

const on = (made: Sheet, slide: SheetStep['slide'], action: string): number[] =>
  made.steps.filter((step) => step.slide === slide && step.action === action).map((step) => step.reading!)

describe('flank feed of a V', () => {
  const made = sheet(job(0.12, ['method: flank-feed', 'flank-under: 0', 'infeed: 0.050']))

  it('sets the compound to half the angle, as its scale shows it, and is proved twice', () => {
    expect(made.features[0]).toMatchObject({ status: 'planned', compoundAngle: 90 - HALF })
    expect(made.steps.find(({ action }) => action === 'swing')?.say).toContain(
      '19° on its swivel scale (0 there is square)',
    )
    const parallel = sheet(job(0.12, ['method: flank-feed', 'flank-under: 0'], 'parallel'))
    expect(parallel.steps.find(({ action }) => action === 'swing')?.say).toContain('71° on its swivel scale')
    expect(problems(made)).toEqual([])
    expect(problems(parallel)).toEqual([])
  })

  it('feeds by the compound alone, the cross-feed on 0, and takes the tool out by the cross-feed', () => {
    expect(on(made, 'cross-feed', 'feed-in')).toEqual([])
    expect(on(made, 'cross-feed', 'return').filter((reading) => reading >= 0)).toEqual([0, 0])
    expect(on(made, 'compound', 'shift')).toEqual([])
    for (const reading of on(made, 'compound', 'go-past')) expect(reading * into).toBeLessThan(-0.03)
    const fed = on(made, 'compound', 'feed-in')
    // Slide travel = depth / cos(half angle), to the nearest mark; a tie leaves metal.
    expect(fed.at(-1)).toBeCloseTo(Math.ceil(300 / into - 0.5) / 1000, 9)
    expect(fed.slice(0, -1)).toEqual([...fed.slice(0, -1)].sort((a, b) => a - b))
    const depths = fed.slice(0, -1).map((reading) => reading * into)
    for (const [i, depth] of depths.entries())
      expect(depth - (depths[i - 1] ?? 0)).toBeLessThanOrEqual(0.05 + 0.001 * into)
  })

  it('is refused where the job swings the compound otherwise, and planned where it says the same angle', () => {
    const other = sheet(job(0.12, ['method: flank-feed', 'flank-under: 0', 'compound: { angle: 70 }'])).features[0]!
    expect(other).toMatchObject({ status: 'refused', refusal: { code: 'compound-angle' } })
    expect(other.refusal?.reason).toContain('71° from parallel (19° from square)')
    const same = sheet(job(0.12, ['method: flank-feed', 'flank-under: 0', 'compound: { angle: 71 }']))
    expect(same.steps.map(({ say }) => say)).toEqual(
      sheet(job(0.12, ['method: flank-feed', 'flank-under: 0'])).steps.map(({ say }) => say),
    )
    expect(sheet(job(0.12, ['method: flank-feed', 'flank-under: 0', 'side-feed: carriage'])).features[0]).toMatchObject(
      {
        status: 'refused',
        refusal: { code: 'side-feed' },
      },
    )
  })

  it('goes down again beside itself where the nose is narrower than the root: compound rounded first, then the cross-feed', () => {
    const narrow = sheet(job(0.05, ['method: flank-feed', 'flank-under: 0']))
    expect(problems(narrow)).toEqual([])
    const measured = narrow.steps.findIndex(({ action }) => action === 'measure')
    const finish = narrow.steps.findIndex(({ action }, i) => action === 'go-past' && i > measured)
    const runs = narrow.steps.slice(finish).filter(({ slide, action }) => slide === 'compound' && action === 'feed-in')
    const sets = narrow.steps
      .slice(finish)
      .filter(({ slide, action }) => slide === 'cross-feed' && action === 'return')
      .map(({ reading }) => reading!)
    // 0.070 of root beside the nose, no further apart than nine tenths of it: two lines beyond the flank itself.
    expect(runs).toHaveLength(3)
    runs.slice(1).forEach(({ reading }, i) => {
      const place = 300 * slope + 70 * ((i + 1) / 2)
      expect(reading).toBeCloseTo(Math.ceil(place / along - 0.5) / 1000, 9)
      expect(sets[i + 1]).toBeCloseTo(Math.ceil(300 - reading! * 1000 * into - 0.5) / 1000, 9)
    })
    expect(sets[0]).toBe(0)
    // The floors of the lines lie up to a mark apart in depth; the flat at the root is all of them.
    const root = narrow.features[0]!.finished!.root!
    expect(root.planned).toBeCloseTo(0.12, 3)
  })

  it('takes a nose within half a mark of the root for the root, and refuses a point where a flat is asked for', () => {
    const close = sheet(job(0.1199, ['method: flank-feed', 'flank-under: 0']))
    expect(new Set(on(close, 'cross-feed', 'return').filter((reading) => reading > -0.1))).toEqual(new Set([0]))
    expect(problems(close)).toEqual([])
    expect(sheet(job(0, ['method: flank-feed', 'flank-under: 0'])).features[0]).toMatchObject({
      status: 'refused',
      refusal: { code: 'nose-too-narrow' },
    })
  })

  it('is found out where the last feed of the compound is two marks more, or the cross-feed does not come back to 0', () => {
    const spoiled = (change: (step: SheetStep) => number | null): Sheet => ({
      ...made,
      steps: made.steps.map((step) => {
        const reading = change(step)
        return reading === null ? step : { ...step, reading, mark: Math.round(reading * 1000) % 100 }
      }),
    })
    const last = on(made, 'compound', 'feed-in').at(-1)!
    expect(problems(spoiled(({ reading }) => (reading === last ? last + 0.002 : null)))).not.toEqual([])
    const cross = spoiled(({ reading, slide, action }) =>
      slide === 'cross-feed' && action === 'return' && reading === 0 ? 0.002 : null,
    )
    expect(problems(cross)).not.toEqual([])
  })
})

describe('a V wider than its tool, by plunging', () => {
  it('takes several places and feeds across the floor, proved twice', () => {
    const wide = sheet(job(0.03))
    expect(problems(wide)).toEqual([])
    const rough = wide.steps.slice(
      0,
      wide.steps.findIndex(({ action }) => action === 'measure'),
    )
    const places = rough.filter(({ slide, action }) => slide === 'compound' && action === 'shift')
    expect(places.length).toBeGreaterThanOrEqual(4)
    expect(on(wide, 'compound', 'feed-across')).toHaveLength(1)
  })

  it('plunges side by side where the compound is swung', () => {
    const swung = sheet(job(0.03, ['compound: { angle: 10 }']))
    expect(problems(swung)).toEqual([])
    expect(on(swung, 'compound', 'feed-across')).toEqual([])
  })
})

describe('flank feed with the compound set half a degree under half the angle', () => {
  const made = sheet(job(0.12, ['method: flank-feed', 'infeed: 0.050']))
  const under = (HALF - 0.5) * (Math.PI / 180)

  it('is set so, and is proved twice', () => {
    expect(made.features[0]).toMatchObject({ status: 'planned', compoundAngle: 90 - HALF + 0.5 })
    expect(problems(made)).toEqual([])
    expect(problems(sheet(job(0.05, ['method: flank-feed'])))).toEqual([])
    expect(problems(sheet(job(0.12, ['method: flank-feed', 'flank-under: 1'])))).toEqual([])
  })

  it('goes down to the place of the plunge, and finishes by a few marks straight in', () => {
    const place = on(made, 'compound', 'feed-in').at(-1)!
    // The tailstock-side corner of the nose is at the depth times the tangent of half the angle, to a mark.
    expect(Math.abs(place * Math.sin(under) - 0.3 * slope)).toBeLessThan(0.0006)
    const [plunge, ...others] = on(made, 'cross-feed', 'feed-in')
    expect(others).toEqual([])
    expect(Math.abs(plunge! + place * Math.cos(under) - 0.3)).toBeLessThan(0.0011)
    const before = on(made, 'cross-feed', 'return').at(-1)!
    expect(plunge! - before).toBeGreaterThan(0.004)
    expect(plunge! - before).toBeLessThan(0.03)
  })

  it('never lets the trailing corner of the nose touch the finished flank on the way down', () => {
    const cross = on(made, 'cross-feed', 'return')[0]!
    // Distance of that corner from the flank, toward the headstock, at every reading of the roughing: along less depth times slope, from the near line.
    const roughing = made.steps.slice(
      0,
      made.steps.findIndex(({ action }) => action === 'measure'),
    )
    const fed = roughing.filter(({ slide, action }) => slide === 'compound' && action === 'feed-in')
    expect(fed.length).toBeGreaterThan(3)
    for (const { reading } of fed) {
      const depth = cross + reading! * Math.cos(under)
      expect(reading! * Math.sin(under) - depth * slope).toBeGreaterThan(0.001)
    }
  })

  it('takes a compound that the job sets up to a degree under, and refuses one further off', () => {
    const at = (angle: number) => sheet(job(0.12, ['method: flank-feed', `compound: { angle: ${angle} }`])).features[0]!
    expect(at(71)).toMatchObject({ status: 'planned', compoundAngle: 71 })
    expect(at(71.75)).toMatchObject({ status: 'planned', compoundAngle: 71.75 })
    expect(at(72.5)).toMatchObject({ status: 'refused', refusal: { code: 'compound-angle' } })
    expect(at(70.5)).toMatchObject({ status: 'refused', refusal: { code: 'compound-angle' } })
  })
})
