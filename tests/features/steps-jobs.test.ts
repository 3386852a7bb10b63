import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printText } from '../../src/print/text/print.ts'
import { allTold, told } from '../prose.ts'
import { compiled, type Given, type Planned, planned, planOf } from './steps-shop.ts'

const ROUND = '{ shape: round, radius: 1/8, reach: 0.4 }'
const SQUARE = '{ shape: square, width: 1/8, reach: 0.4 }'
const groove = (more = ''): Given => ({
  tool: ROUND,
  feature: `shape: concave, center: 1.5, radius: 1/4, width: 0.4${more}`,
})
const corner = (tool: string, more = ''): Given => ({
  tool,
  feature: `shape: corner, corner-of: end, radius: 1/8${more}`,
})

/** Thousandths of an inch of every finishing place: along and deep, in the order in which they are cut. */
const finishes = ({ operation }: Planned): [number, number][] => {
  let along = 0
  const places: [number, number][] = []
  operation.moves.forEach((move, i) => {
    if (move.slide === 'compound' && typeof move.count === 'number') along = move.count
    if (move.purpose === 'finish' && operation.moves[i + 1]?.action === 'back-out') places.push([along, move.count!])
  })
  return places
}

describe('a concave radius with a smaller round tool', () => {
  it('is finished at whole marks, near to far, each as deep as the arc asks for there', () => {
    const places = finishes(planned(groove()))
    // sin φm = 0.4 / 2R, so the tip goes (R − r)·0.8 = 0.100 to each side.
    expect(places[0]![0]).toBe(-100)
    expect(places.at(-1)![0]).toBe(100)
    expect(places.map(([z]) => z)).toEqual(places.map(([z]) => z).toSorted((a, b) => a - b))
    for (const [z, deep] of places) {
      const phi = Math.asin(z / 125)
      expect(Math.abs(deep - (100 - 125 * (1 - Math.cos(phi))))).toBeLessThanOrEqual(0.5 + 1e-6)
    }
  })
  it('takes no more places than the cusp asks for', () => {
    const count = (cusp: number) => finishes(planned(groove(`, cutting: { cusp: ${cusp} }`))).length
    // From δ: cusp = R(R − r)δ²/8r, and φm = asin 0.8 to each side.
    const fewest = (cusp: number) =>
      Math.ceil((2 * Math.asin(0.8)) / Math.sqrt((8 * 0.125 * cusp) / (0.25 * 0.125))) + 1
    for (const cusp of [0.001, 0.002, 0.004]) {
      // A mark that rounds a place deeper may spare one.
      expect(count(cusp)).toBeGreaterThanOrEqual(fewest(cusp) - 1)
      expect(count(cusp)).toBeLessThanOrEqual(fewest(cusp) + 2)
    }
    expect(finishes(planned(groove())).length).toBe(count(0.0005))
  })
  it('keeps the cusp that is asked for, replayed from the rounded readings, and says where the marks cannot', () => {
    const said = (cusp: number) => allTold(planned(groove(`, cutting: { cusp: ${cusp} }`)).notes)
    const ridge = (cusp: number) => Number(said(cusp).match(/ridges are at most (\.\d+)/)![1])
    for (const cusp of [0.0002, 0.0005, 0.001, 0.0015, 0.002, 0.003, 0.004]) {
      expect(ridge(cusp)).toBeLessThanOrEqual(cusp)
      expect(said(cusp)).not.toContain('was asked for')
    }
    // Whole marks along the work would keep .001 with exact depths; with depths that are whole marks too they do not.
    const corner = { tool: SQUARE, feature: 'shape: corner, corner-of: end, radius: 3/32, cutting: { cusp: 0.001 }' }
    expect(allTold(planned(corner).notes)).toContain('A cusp of .0010 was asked for; the marks give .0011')
  })
  it('takes the middle out first, and no infeed is larger than asked', () => {
    const { operation } = planned(groove(', cutting: { infeed: 0.015 }'))
    const ins = operation.moves.filter((move) => move.action === 'feed-in')
    expect(ins.slice(0, 3).map((move) => move.count)).toEqual([15, 30, 45])
    const firstShift = operation.moves.findIndex((move) => move.purpose === 'to-place')
    expect(firstShift).toBeGreaterThan(operation.moves.indexOf(ins[2]!))
  })
  it('says the cusp and the overcut as replayed from the rounded readings', () => {
    const { notes, operation } = planned(groove())
    const said = allTold(notes).match(/ridges are at most (\.\d+|0\.\d+) out .* at most (\.\d+|0\.\d+) too deep/)
    // Never more than the cusp and half a mark: the depth is rounded to the nearest.
    expect(Number(said?.[1])).toBeLessThanOrEqual(0.001)
    expect(Number(said?.[2])).toBeLessThanOrEqual(0.0005)
    expect(operation.cusp).toEqual({ most: 12_700_000, given: false })
  })
  it('no longer warns that cusp: has no effect', () => {
    expect(compiled(groove(', cutting: { cusp: 0.001 }')).plan!.warnings.map((one) => one.code)).not.toContain(
      'cusp-unused',
    )
  })
})

describe('a convex corner without a corner tool', () => {
  it.each([
    ['round', ROUND, 125],
    ['square', SQUARE, 0],
  ])('is stepped around with a %s tool on the circle of R + r', (_, tool, r) => {
    const places = finishes(planned(corner(tool)))
    const path = 125 + r
    expect(places.length).toBeGreaterThan(5)
    for (const [z, deep] of places) {
      const ideal = path - Math.sqrt(path ** 2 - (path - z) ** 2)
      expect(Math.abs(deep - ideal)).toBeLessThanOrEqual(0.5 + 1e-6)
    }
  })
  it('holds the radius within its limits, as a gauge takes it', () => {
    for (const tool of [ROUND, SQUARE]) {
      const { budget } = planned({ tool, feature: 'shape: corner, corner-of: end, radius: 1/8 ±0.003' })
      expect(budget[0]!.id).toBe('radius')
      // Within a mark of the dials.
      expect(Math.abs(budget[0]!.planned / 25_400_000_000 - 0.125)).toBeLessThan(0.001)
    }
  })
})

describe('what cannot be stepped is refused', () => {
  const code = (given: Given) => {
    const feature = planOf(given)
    return feature.status === 'refused' ? feature.code : null
  }
  const stepped = (first: number) =>
    `{ material: mild steel, held: chuck, overhang: 4, steps: [{ name: pilot, diameter: ${first}, length: 1 }, { name: body, diameter: 1.5, length: 5 }] }`
  it('with the compound swung', () => {
    expect(code(groove(', cutting: { compound: { angle: 29 } }'))).toBe('compound-swung')
    expect(code(corner(ROUND, ', cutting: { compound: { angle: 29 } }'))).toBe('compound-swung')
  })
  it('with too little of the round end ground', () => {
    // r·W/2R = 0.100 to each side of the tip.
    expect(code({ ...groove(), tool: '{ shape: round, radius: 1/8, edge-width: 0.19, reach: 0.4 }' })).toBe(
      'edge-too-narrow',
    )
    expect(code({ ...groove(), tool: '{ shape: round, radius: 1/8, edge-width: 0.21, reach: 0.4 }' })).toBe(null)
    expect(code(corner('{ shape: round, radius: 1/8, edge-width: 0.2, reach: 0.4 }'))).toBe('edge-too-narrow')
  })
  it('with a round tool beside a lower step that it would cut, R + r deep', () => {
    const at = (diameter: number, tool: string) =>
      code({ tool, part: stepped(diameter), feature: 'shape: corner, corner-of: body, radius: 1/8' })
    expect(at(1.1, ROUND)).toBe('shoulder-too-low')
    expect(at(1.1, SQUARE)).toBe(null)
    expect(at(0.8, ROUND)).toBe(null)
  })
  it('with rounded corners of a square tool, and without reach', () => {
    expect(code(corner('{ shape: square, width: 1/8, corner-radius: 0.01, reach: 0.4 }'))).toBe('corner-not-sharp')
    expect(code(corner('{ shape: round, radius: 1/8, reach: 0.2 }'))).toBe('reach-too-short')
  })
  it('with marks too far apart for the cusp that is asked for', () => {
    const coarse = '{ graduation: 0.010, per-turn: 0.100, backlash: 0.006, travel: 2.5 }'
    expect(code({ ...groove(', cutting: { cusp: 0.0001 }'), compound: coarse })).toBe('cusp-not-kept')
  })
})

it('plans grooves and corners of many sizes, dials and units, proved by the replay', { timeout: 60_000 }, () => {
  const failed: string[] = []
  const look = (given: Given) => {
    const feature = planOf(given)
    if (feature.status === 'refused' && feature.code !== 'cusp-not-kept')
      failed.push(`${JSON.stringify(given)} ${feature.code} ${told(feature.reason)}`)
  }
  for (const R of [0.1, 0.25])
    for (const share of [0.4, 0.9])
      for (const wide of [0.8, 2]) {
        const tool = `{ shape: round, radius: ${(R * share).toFixed(4)}, reach: 0.9 }`
        look({ tool, feature: `shape: concave, center: 2, radius: ${R}, width: ${(R * wide).toFixed(3)}` })
        look({ tool, feature: `shape: corner, corner-of: end, radius: ${R}` })
        look({
          units: 'mm',
          tool: `{ shape: round, radius: ${(R * share * 25).toFixed(2)}, reach: 22 }`,
          feature: `shape: concave, center: 50, radius: ${R * 25}, width: ${(R * wide * 25).toFixed(2)}`,
        })
        look({
          cross: '{ readout: 0.0005, reads: diameter }',
          tool: `{ shape: square, width: ${(R * share).toFixed(4)}, reach: 0.9 }`,
          feature: `shape: corner, corner-of: end, radius: ${R}, cutting: { cusp: ${wide / 200} }`,
        })
      }
  expect(failed).toEqual([])
})

describe('the text sheet', () => {
  it('tells a place in one line that names all its steps, and leaves none out', () => {
    const sheet = sheetFor(compiled(groove()).plan!)
    const text = printText(sheet)
    const told = [...text.matchAll(/^ *(\d+)(?:-(\d+))? {2}[A-Z]/gm)].flatMap(([, from, to]) =>
      Array.from({ length: Number(to ?? from) - Number(from) + 1 }, (_, i) => Number(from) + i),
    )
    expect(told).toEqual(sheet.steps.map((step) => step.number))
    expect(text).toMatch(/STATION \d+ +to 45; in past 0, to 81, to 92; OUT past 0, stop at 50/)
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })
})

it('plans a job file with a groove and both corners stepped, metric, on coarse dials', () => {
  const { plan, diagnostics } = compile(join(import.meta.dirname, 'steps-job.yaml'), (file) => ({
    ok: true,
    file,
    bytes: readFileSync(file),
  }))
  expect(diagnostics).toEqual([])
  expect(plan!.features.map((feature) => [feature.name, feature.status])).toEqual([
    ['End of the roller', 'planned'],
    ['Rope groove', 'planned'],
    ['Edge of the flange', 'planned'],
  ])
  expect(allTold(plan!.features.flatMap((feature) => (feature.status === 'planned' ? feature.notes : [])))).toContain(
    'Step and file',
  )
})
