import { describe, expect, it } from 'vitest'
import type { Curve } from '../../src/moves/form.ts'
import { printerOf } from '../../src/print/registry.ts'
import type { Sheet, SheetFeature } from '../../src/sheet/sheet.ts'
import { INCH } from '../../src/units/length.ts'
import { drawnExample, drawnSheets } from './drawn.ts'
import { type Element, everyIn, parse, pointsOf, textIn, withClass } from './xml.ts'

const MM = 1e9
const print = await printerOf('sheet', 'svg')
const picture = (sheet: Sheet, id: string): Element =>
  everyIn(parse(print(sheet))).find(({ attributes }) => attributes.id === id)!

/** As the picture says it: "scale 10:1", "scale 1:2". */
const scaleOf = (drawing: Element): number => {
  const texts = everyIn(drawing).filter(({ name }) => name === 'text')
  const [, paper, work] = /scale (\d+):(\d+)$/.exec(texts.map(textIn).find((text) => text.includes('scale'))!)!
  return Number(paper) / Number(work)
}

const depthAt = (curve: Curve, z: number): number =>
  curve.kind === 'line'
    ? curve.d0 + (curve.d1 - curve.d0) * ((z - curve.z0) / (curve.z1 - curve.z0))
    : curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2))

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values)
const plannedIn = (sheet: Sheet) =>
  sheet.features.filter(
    (feature): feature is Extract<SheetFeature, { status: 'planned' }> => feature.status === 'planned',
  )

describe.each(drawnSheets().filter(([, sheet]) => plannedIn(sheet).length > 0))('%s', (_, sheet) => {
  it('draws the part as long and as thick as it is', () => {
    const drawing = picture(sheet, 'part')
    const scale = scaleOf(drawing)
    const above = withClass(drawing, 'above').flatMap(({ attributes }) => pointsOf(attributes.d!))
    const { jaws, stock } = sheet.drawing!
    const end = Math.max(...stock.map(({ to }) => to))
    const [face, ...form] = above
    const length = Math.min(jaws ?? end, end) / MM
    expect(span(above.map(([x]) => x)) / scale).toBeCloseTo(length, 2 - Math.log10(1 / scale))
    const thickest = Math.max(
      ...sheet.part.steps.filter(({ from }) => from < (jaws ?? end)).map(({ measured }) => measured),
    )
    expect((2 * (face![1] - Math.min(...form.map(([, y]) => y)))) / scale).toBeCloseTo(thickest / MM, 1)
  })

  it('draws every form as wide and as deep as it is', () => {
    for (const feature of plannedIn(sheet)) {
      const drawing = picture(sheet, `form-${feature.index + 1}`)
      const scale = scaleOf(drawing)
      const [wanted] = withClass(drawing, 'wanted')
      const points = everyIn(wanted!).flatMap(({ attributes }) => pointsOf(attributes.d ?? ''))
      const pieces = feature.drawing!.wanted
      const [from, to] = [pieces[0]!.from, pieces.at(-1)!.to]
      expect(span(points.map(([x]) => x)) / scale).toBeCloseTo((to - from) / MM, 3)
      const depths = pieces.flatMap(({ from, to, curve }) =>
        Array.from({ length: 1001 }, (_, i) => depthAt(curve, from + ((to - from) * i) / 1000)),
      )
      expect(span(points.map(([, y]) => y)) / scale).toBeCloseTo(span(depths) / MM, 2)
    }
  })

  it('draws the wanted form within the bands of its limits', () => {
    for (const feature of plannedIn(sheet)) {
      const drawing = picture(sheet, `form-${feature.index + 1}`)
      const points = everyIn(withClass(drawing, 'wanted')[0]!).flatMap(({ attributes }) => pointsOf(attributes.d ?? ''))
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
      const lines = feature.proof.lines
      const has = (id: string): boolean => lines.some((one) => one.id === id && one.limits !== null)
      const bands = withClass(drawing, 'band')
      const floors = bands.filter(({ attributes }) => attributes.class === 'band floor')
      expect(floors).toHaveLength(has('depth') || has('bottomDiameter') ? 1 : 0)
      for (const { attributes } of floors) {
        const deepest = Math.max(...ys)
        expect(deepest).toBeGreaterThan(Number(attributes.y) - 0.001)
        expect(deepest).toBeLessThan(Number(attributes.y) + Number(attributes.height) + 0.001)
      }
      for (const { attributes } of bands.filter(({ attributes }) => attributes.class === 'band width')) {
        expect(Math.min(...xs)).toBeGreaterThan(Number(attributes.x) - 0.001)
        expect(Math.min(...xs)).toBeLessThan(Number(attributes.x) + Number(attributes.width) + 0.001)
      }
    }
  })

  it('draws a pass for every step that takes metal from the form, and for no other', () => {
    for (const feature of plannedIn(sheet)) {
      const steps = withClass(picture(sheet, `form-${feature.index + 1}`), 'pass').map(({ attributes }) =>
        Number(attributes['data-step']),
      )
      const cutting = feature.drawing!.passes.map(({ step }) => step)
      expect(steps.length).toBeGreaterThan(0)
      expect(steps.every((step) => cutting.includes(step))).toBe(true)
      expect(steps.at(-1)).toBe(cutting.at(-1))
    }
  })
})

describe('the press screw, worked out by hand', () => {
  const sheet = drawnExample('01-press-screw')
  const drawing = picture(sheet, 'form-1')
  const scale = scaleOf(drawing)
  const box = (of: string): { left: number; top: number; wide: number; high: number } => {
    const { x, y, width, height } = withClass(drawing, of)[0]!.attributes
    return { left: Number(x), top: Number(y), wide: Number(width), high: Number(height) }
  }
  const inch = (paper: number): number => paper / scale / 25.4
  const wanted = pointsOf(everyIn(withClass(drawing, 'wanted')[0]!)[1]!.attributes.d!)
  const [floor, right] = [wanted[0]![1], wanted[0]![0]]
  const surface = Math.min(
    ...withClass(drawing, 'work')
      .flatMap(({ attributes }) => pointsOf(attributes.d!))
      .map(([, y]) => y),
  )

  it('the groove is .072 deep under the surface as measured', () => {
    expect(inch(floor - surface)).toBeCloseTo(0.072, 4)
  })

  it('the band of its width is from .160 to .170 beyond the edge toward the tailstock', () => {
    const { left, wide } = box('width')
    expect(inch(right - left)).toBeCloseTo(0.17, 4)
    expect(inch(right - left - wide)).toBeCloseTo(0.16, 4)
  })

  it('the band of its floor is from .068 to .076 deep', () => {
    const { top, high } = box('floor')
    expect(inch(top - surface)).toBeCloseTo(0.068, 4)
    expect(inch(top + high - surface)).toBeCloseTo(0.076, 4)
  })

  it('what is left after roughing is hatched, .054 to .072 deep and as wide as the groove', () => {
    const points = pointsOf(withClass(drawing, 'left')[0]!.attributes.d!)
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
    expect(inch(Math.min(...ys) - surface)).toBeCloseTo(0.054, 4)
    expect(inch(Math.max(...ys) - surface)).toBeCloseTo(0.072, 4)
    expect(inch(span(xs))).toBeCloseTo(0.165, 4)
  })

  it('the tool is as wide as it is measured, its reference point over the edge that it is brought to', () => {
    const tool = everyIn(withClass(drawing, 'tool')[0]!).flatMap(({ attributes }) => pointsOf(attributes.d ?? ''))
    expect(inch(span(tool.map(([x]) => x)))).toBeCloseTo(0.148, 4)
    const { cx } = withClass(drawing, 'reference')[0]!.attributes
    expect(Number(cx)).toBeCloseTo(right, 2)
  })

  it('figures are those of the proof, as they are printed there', () => {
    const letters = everyIn(drawing)
      .filter(({ name }) => name === 'text')
      .map(textIn)
    expect(letters).toEqual(
      expect.arrayContaining([
        '.1650 (.160 to .170)',
        '.0720',
        '(.068 to .076)',
        '\u00d8 .7305',
        '1.1250 from the free end',
      ]),
    )
    const part = everyIn(picture(sheet, 'part'))
      .filter(({ name }) => name === 'text')
      .map(textIn)
    expect(part).toEqual(expect.arrayContaining(['\u00d8 .8745', '\u00d8 1.4985', '2.000', '2.500', '1.1250', 'jaws']))
  })

  it('the words have the same facts', () => {
    const [, desc] = drawing.children as Element[]
    expect(textIn(desc!)).toContain('0.165 ±0.005 wide')
    expect(textIn(desc!)).toContain('depth .0720 (.068 to .076)')
    expect(textIn(desc!)).toContain('metal is taken by steps 13, 16, 25, 26')
    expect(textIn(desc!)).toContain('what is left after step 16')
  })

  it('is drawn from what the sheet has, not from the job: a wider form is drawn wider', () => {
    const [feature] = plannedIn(sheet)
    const wider = feature!.drawing!.wanted.map((piece) => ({ ...piece, to: piece.to + INCH / 100 }))
    const region = { ...feature!.drawing!.region, to: feature!.drawing!.region.to + INCH / 100 }
    const other: Sheet = {
      ...sheet,
      features: [{ ...feature!, drawing: { ...feature!.drawing!, wanted: wider, region } }],
    }
    const drawn = picture(other, 'form-1')
    const points = everyIn(withClass(drawn, 'wanted')[0]!).flatMap(({ attributes }) => pointsOf(attributes.d ?? ''))
    expect(span(points.map(([x]) => x)) / scaleOf(drawn) / 25.4).toBeCloseTo(0.175, 4)
  })
})

describe('sizes that a leader points at', () => {
  const at = (name: string, form: number) => {
    const drawing = picture(drawnExample(name), `form-${form}`)
    return everyIn(drawing)
      .filter(({ name }) => name === 'text')
      .map(textIn)
  }
  const [pulley, hub] = [at('07-mill-pulley', 1), at('10-crank-hub', 3)]

  it('an included angle, the flat at its root, and its middle by a center line', () => {
    expect(pulley).toEqual(
      expect.arrayContaining(['38° (37° to 39°) included', '.2480 flat', '.9000 (.880 to .920) from the free end']),
    )
  })

  it('a hollow by its radius', () => {
    expect(hub).toContain('R 6.000 (5.70 to 6.30)')
    expect(hub.filter((text) => text.startsWith('radius'))).toEqual([])
  })

  it('and the leader ends on what it is of: the arc is 6 from its center at 60', () => {
    const sheet = drawnExample('10-crank-hub')
    const drawing = picture(sheet, 'form-3')
    const arcs = sheet.features[2]!.status === 'planned' ? sheet.features[2]!.drawing!.wanted : []
    const { curve } = arcs.find((piece) => piece.curve.kind === 'arc')!
    if (curve.kind !== 'arc') throw new Error('no arc')
    const wanted = pointsOf(everyIn(withClass(drawing, 'wanted')[0]!)[1]!.attributes.d!)
    const [x0, y0] = wanted[0]!
    const scale = scaleOf(drawing)
    const [from, start] = [arcs[0]!.from, depthAt(arcs[0]!.curve, arcs[0]!.from)]
    const centerX = x0 - ((curve.zc - from) / MM) * scale
    const centerY = y0 + ((curve.dc - start) / MM) * scale
    const [leader] = withClass(drawing, 'leader')
    const [x, y] = pointsOf(leader!.attributes.d!)[1]!
    expect(Math.hypot(x - centerX, y - centerY) / scale).toBeCloseTo(6, 2)
  })
})
