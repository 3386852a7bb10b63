import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import type { Bench } from '../../src/features/draft.ts'
import type { GrooveFeature } from '../../src/features/feature.ts'
import { squareForm } from '../../src/features/groove/draft.ts'
import { filletSteps } from '../../src/features/groove/step-fillets.ts'
import { steppedResult } from '../../src/features/radius/stepped-notes.ts'
import type { Form, Piece } from '../../src/moves/form.ts'
import { linePiece } from '../../src/moves/pieces.ts'
import type { FeaturePlan } from '../../src/plan/plan.ts'
import { cutInto } from '../../src/replay/form/insert.ts'
import { swept } from '../../src/replay/form/sweep.ts'
import { squareEdge } from '../../src/tools/square/edge.ts'
import { INCH } from '../../src/units/length.ts'
import { allTold, told } from '../prose.ts'

const thou = INCH / 1000

const planOf = (corner: string, tool = 'width: 0.123, corner-radius: 0.020', more = ''): FeaturePlan => {
  const text = `title: Bearing of the cider press
units: inch
part: { material: mild steel, held: chuck, overhang: 3, diameter: 1.5, length: 5 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  blunt: { shape: square, ${tool}, reach: 0.25 }
features:
  - { kind: groove, name: Bearing, near: 1, width: 0.375, depth: 0.125, ${corner}, tool: blunt${more} }
`
  const done = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: new TextEncoder().encode(text) }))
  if (done.plan === null) throw new Error(JSON.stringify(done.diagnostics))
  return done.plan.features[0]!
}
const planned = (...given: Parameters<typeof planOf>) => {
  const feature = planOf(...given)
  if (feature.status !== 'planned') throw new Error(`${feature.code}: ${told(feature.reason)}`)
  return feature
}
const refused = (...given: Parameters<typeof planOf>) => {
  const feature = planOf(...given)
  return feature.status === 'refused' ? feature.code : null
}
const sizeOf = (feature: ReturnType<typeof planned>) => feature.budget.find(({ id }) => id === 'cornerRadius')
const steps = (feature: ReturnType<typeof planned>) => feature.operation.cusp !== undefined

describe('a corner radius in a groove', () => {
  it.each(['0.020', '0.020 ±0.005', '0.022 ±0.003', '0.020 max', '0.030 max'])(
    '%s is left by a tool of .020',
    (drawn) => {
      const feature = planned(`corner-radius: ${drawn}`)
      expect(steps(feature)).toBe(false)
      expect(sizeOf(feature)!.planned / thou).toBeCloseTo(20, 6)
      // Half a mark off, the finish widens what roughing left of the corner: a tool of the largest radius allowed has nothing to spare.
      const verdict = drawn === '0.020' ? 'no limits given' : drawn === '0.020 max' ? 'may not hold' : 'holds'
      expect(sizeOf(feature)!.verdict).toBe(verdict)
      // From as sharp as the drawing lets them be, which is no arc at all under "max", to as round.
      const kinds = (form: Form) => form.map(({ curve }) => curve.kind)
      expect(kinds(feature.operation.wanted)).toEqual(drawn.endsWith('max') ? ['line'] : ['arc', 'line', 'arc'])
      expect(kinds(feature.operation.atLeast!)).toEqual(['arc', 'line', 'arc'])
      const check = feature.inspection!.find(({ id }) => id === 'cornerRadius')!
      expect(check.using[0]).toBe('under a glass, beside the corner of the tool: too small for a radius gauge')
    },
  )
  it('is not measured where it may be sharp, and is', () => {
    expect(sizeOf(planned('corner-radius: 0.020 max', 'width: 0.123'))).toBeUndefined()
  })
  it('is refused where the corners of the tool are rounder than the largest allowed', () => {
    expect(refused('corner-radius: 0.015 max')).toBe('corner-too-round')
    expect(refused('corner-radius: 0.015 ±0.004')).toBe('corner-too-round')
    expect(refused('corner-radius: 0.015')).toBe('corner-too-round')
  })
})

describe('a corner radius rounder than the corners of the tool', () => {
  const feature = planned('corner-radius: 1/16 ±0.005')
  /** Places of the finish in thousandths, along and deep, in the order in which they are cut. */
  const places = (() => {
    let along = 0
    return feature.operation.moves.flatMap((move) => {
      if (move.slide === 'compound' && typeof move.count === 'number') along = move.count
      return move.purpose === 'finish' || move.purpose === 'take-out-floor' ? [[along, move.count!, move.action]] : []
    })
  })() as [number, number, string][]

  it('is finished from near to far, on the circle of R − r on both sides, with the floor fed across between', () => {
    const path = 62.5 - 20
    const last = 375 - 123
    const along = places.map(([z]) => z)
    expect(along).toEqual(along.toSorted((a, b) => a - b))
    expect(along[0]).toBe(0)
    expect(along.at(-1)).toBe(last)
    const across = places.findIndex(([, , action]) => action === 'feed-across')
    expect(places[across - 1]!.slice(0, 2)).toEqual([42, 125])
    expect(places[across]!.slice(0, 2)).toEqual([210, 210])
    // The last infeed of every place is the finish there.
    const finish = places.filter(([z, , action], i) => action === 'feed-in' && places[i + 1]?.[0] !== z)
    for (const [z, deep] of finish) {
      const short = Math.max(0, path - Math.min(z, last - z))
      expect(Math.abs(deep - (125 - path + Math.sqrt(path ** 2 - short ** 2)))).toBeLessThanOrEqual(0.51)
    }
    expect(finish.length).toBeGreaterThan(10)
  })
  it('takes the middle out first, and no infeed is larger than asked', () => {
    const first = planned('corner-radius: 1/16', undefined, ', cutting: { infeed: 0.030 }').operation.moves
    const shift = first.findIndex(({ action, slide }) => action === 'shift' && slide === 'compound')
    expect(first[shift]!.count).toBe(126)
    const ins = first.slice(shift).flatMap(({ action, count }) => (action === 'feed-in' ? [count!] : [-1]))
    expect(ins.slice(1, 5)).toEqual([30, 60, 90, 105])
  })
  it('holds its limits, and says what ridges it leaves', () => {
    expect(sizeOf(feature)!.planned / thou).toBeCloseTo(62.5, 0)
    expect(sizeOf(feature)!.verdict).toBe('holds')
    const said = allTold(feature.notes).match(/ridges are at most (\.\d+) out .* at most (\.\d+) too deep/)
    expect(Number(said?.[1])).toBeLessThanOrEqual(0.001)
    expect(Number(said?.[2])).toBeLessThanOrEqual(0.0005)
    expect(allTold(feature.notes)).not.toContain('file')
  })
  it('takes fewer places for a taller cusp', () => {
    const count = (cusp: number) =>
      planned('corner-radius: 1/16', undefined, `, cutting: { cusp: ${cusp} }`).operation.moves.filter(
        ({ purpose, action }) => purpose === 'to-place' && action === 'shift',
      ).length
    expect(count(0.002)).toBeLessThan(count(0.001))
    expect(count(0.001)).toBeLessThan(count(0.0007))
  })
  it('is left as a stair by sharp corners, to be filed', () => {
    const sharp = planned('corner-radius: 1/16 ±0.005', 'width: 0.123')
    expect(steps(sharp)).toBe(true)
    expect(allTold(sharp.notes)).toContain('Step and file')
    expect(sizeOf(sharp)!.planned / thou).toBeCloseTo(62.5, 0)
  })
  it('is refused where the tool is too wide, the groove too small, or the compound swung', () => {
    expect(refused('corner-radius: 0.1', 'width: 0.25, corner-radius: 0.020')).toBe('too-wide-to-step')
    expect(refused('corner-radius: 0.130')).toBe('no-solution')
    expect(refused('corner-radius: 0.150', 'width: 0.370, corner-radius: 0.150')).toBe('no-solution')
    expect(refused('corner-radius: 1/16', undefined, ', cutting: { compound: { angle: 20 } }')).toBe('compound-swung')
  })
})

describe('the cusp of a stepped fillet', () => {
  const bench = { units: 'inch' } as Bench
  const feature = {
    cutting: { cusp: null, leave: null, infeed: null, overlap: null, leaveSides: null },
  } as unknown as GrooveFeature
  it.each([
    [0.0625, 0.02, 0.1],
    [0.125, 0.03, 0.08],
    [0.1, 0.08, 0.4],
  ])('agrees with the replay on both sides, R %f, r %f, places %f rad apart', (R, r, delta) => {
    const [Rpm, rpm, edge, width, depth] = [R * INCH, r * INCH, 0.2 * INCH, 0.5 * INCH, 0.2 * INCH]
    const cuts = filletSteps(bench, feature, { R: Rpm, r: rpm, edge, depth, first: 0, last: width - edge })
    const path = Rpm - rpm
    const angles = [Math.PI / 4 + delta, Math.PI / 4, Math.PI / 4 - delta]
    const near = angles.map((phi) => path * (1 - Math.sin(phi)))
    const far = near.map((place) => width - edge - place).toReversed()
    const exact = Rpm - path * Math.cos(delta / 2) - Math.sqrt(rpm ** 2 - path ** 2 * Math.sin(delta / 2) ** 2)
    for (const places of [near, far]) {
      const part: Piece[] = [linePiece(-INCH, 0, INCH, 0)]
      for (const z of places)
        cutInto(
          part,
          swept(
            squareEdge(edge, rpm),
            [
              [
                { z, d: cuts.depthAt(z) },
                { z, d: cuts.depthAt(z) },
              ],
            ],
            0,
          ),
        )
      const arcs = squareForm(0, width, depth, Rpm, 0).filter(({ curve }) => curve.kind === 'arc')
      // Only between the outermost of the places: beyond them nothing was cut.
      const at = (phi: number) => Rpm * (1 - Math.sin(phi))
      const [low, high] = [at(angles[0]!), at(angles[2]!)]
      const arc =
        places === near ? { ...arcs[0]!, from: low, to: high } : { ...arcs[1]!, from: width - high, to: width - low }
      const found = steppedResult([arc], part)
      expect(found.left / exact).toBeGreaterThan(0.98)
      expect(found.left / exact).toBeLessThan(1.02)
      expect(found.over).toBeLessThan(10)
      expect(cuts.outside(cuts.between(places[0]!, places[1]!)) / exact).toBeCloseTo(1, 6)
    }
  })
})
