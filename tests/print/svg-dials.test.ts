import { describe, expect, it } from 'vitest'
import { printerOf } from '../../src/print/registry.ts'
import type { Sheet, SheetStep } from '../../src/sheet/sheet.ts'
import { drawnExample, drawnSheets } from './drawn.ts'
import { classesOf, type Element, everyIn, parse, textIn, withClass } from './xml.ts'

const print = await printerOf('sheet', 'svg')
const dialsOf = (sheet: Sheet): Element[] =>
  withClass(parse(print(sheet)), 'picture').filter((one) => classesOf(one).includes('dial'))
const dial = (sheet: Sheet, step: number): Element =>
  dialsOf(sheet).find(({ attributes }) => attributes.id === `reading-${step}`)!
/** Degrees from the top, as the hands of a clock go. */
const pointerOf = (face: Element): number =>
  Number(/rotate\(([-\d.]+) /.exec(withClass(face, 'pointer')[0]!.attributes.transform!)![1])
const mark = (face: Element): string => textIn(withClass(face, 'mark')[0]!)
const turns = (face: Element): string => textIn(withClass(face, 'turns')[0]!)
const way = (face: Element): string[] => withClass(face, 'turning').flatMap(classesOf)
const desc = (face: Element): string => textIn(everyIn(face).find(({ name }) => name === 'desc')!)

describe('the dials of the press screw', () => {
  const sheet = drawnExample('01-press-screw')

  it('are those past zero, the one that roughing stops at, and those that it is finished at', () => {
    expect(dialsOf(sheet).map(({ attributes }) => attributes.id)).toEqual(
      [11, 16, 23, 25, 26].map((step) => `reading-${step}`),
    )
  })

  it('have the pointer at the mark: 72 of 100 is 259.2 degrees', () => {
    expect(pointerOf(dial(sheet, 25))).toBeCloseTo(259.2, 3)
    expect(mark(dial(sheet, 25))).toBe('72')
    expect(turns(dial(sheet, 25))).toBe('less than 1 turn')
    expect(way(dial(sheet, 25))).toContain('forward')
    expect(desc(dial(sheet, 25))).toBe(
      'cross-feed in past 0, to 72; rest 1 s. The pointer is at mark 72 of 100, less than 1 turn; turned the way that the numbers rise.',
    )
  })

  it('say where a reading is past zero, and which way that is turned to', () => {
    expect(pointerOf(dial(sheet, 11))).toBeCloseTo(180, 3)
    expect(mark(dial(sheet, 11))).toBe('50')
    expect(turns(dial(sheet, 11))).toBe('PAST ZERO')
    expect(way(dial(sheet, 11))).toContain('back')
    expect(way(dial(sheet, 23))).toContain('back')
    expect(pointerOf(dial(sheet, 23))).toBeCloseTo(324, 3)
    expect(desc(dial(sheet, 11))).toContain('PAST ZERO; turned back')
  })

  it('move with the reading, and nothing else does', () => {
    const moved = (step: SheetStep): SheetStep =>
      step.number === 25 ? { ...step, reading: 0.179, turns: 1, mark: 79 } : step
    const other = { ...sheet, steps: sheet.steps.map(moved) }
    expect(pointerOf(dial(other, 25))).toBeCloseTo(284.4, 3)
    expect(mark(dial(other, 25))).toBe('79')
    expect(turns(dial(other, 25))).toBe('1 turn from 0')
    for (const step of [11, 16, 23, 26]) expect(dial(other, step)).toEqual(dial(sheet, step))
  })

  it('have a stroke for each of the hundred marks', () => {
    const strokes = withClass(dial(sheet, 25), 'marks')
      .flatMap(everyIn)
      .map(({ attributes }) => attributes.d ?? '')
    expect(strokes.join('').match(/M/g)).toHaveLength(100)
  })
})

describe('the dials of every job', () => {
  it.each(drawnSheets())('%s: at most eight a feature, each at its mark', (_, sheet) => {
    const dials = dialsOf(sheet)
    for (const { index } of sheet.features) {
      const own = dials.filter(({ attributes }) =>
        sheet.steps.some((step) => step.feature === index && attributes.id === `reading-${step.number}`),
      )
      expect(own.length).toBeLessThanOrEqual(8)
    }
    for (const face of dials) {
      const step = sheet.steps.find(({ number }) => `reading-${number}` === face.attributes.id)!
      const { crossFeed, compound, carriage } = sheet.lathe
      const scale = { 'cross-feed': crossFeed, compound: compound.scale, carriage }[step.slide!]!
      expect(turns(face).startsWith('PAST ZERO')).toBe(step.reading! < 0)
      if (scale.kind === 'dial')
        expect(pointerOf(face)).toBeCloseTo((step.mark! * scale.graduation * 360) / scale.perTurn, 2)
      else expect(Number(mark(face))).toBeCloseTo(step.reading!, 5)
    }
    expect(dials.length > 0).toBe(sheet.steps.length > 0)
  })
})

describe('the swivel scale', () => {
  const angles = (name: string): { set: number; wrong: number | null } => {
    const swivel = withClass(parse(print(drawnExample(name))), 'swivel')[0]!
    const angle = (of: string): number | null => {
      const [found] = withClass(swivel, of)
      return found === undefined ? null : Number(found.attributes['data-angle'])
    }
    return { set: angle('setting')!, wrong: angle('wrong') }
  }

  it('has nothing crossed out where it is parallel and 0 there is parallel', () => {
    expect(angles('01-press-screw')).toEqual({ set: 0, wrong: null })
  })

  it('has the other side of a 0 that is parallel crossed out', () => {
    expect(angles('09-swung-compound')).toEqual({ set: 30, wrong: -30 })
  })

  it('has the other side of a 0 that is square crossed out: 71.5 from parallel, 18.5 on either side', () => {
    expect(angles('18-flank-feed')).toEqual({ set: 71.5, wrong: 108.5 })
  })

  it('points the slide where it goes: toward the headstock is left, into the work is up', () => {
    const swivel = withClass(parse(print(drawnExample('09-swung-compound'))), 'swivel')[0]!
    const stroke = everyIn(withClass(swivel, 'setting')[0]!).find(({ name }) => name === 'path')!
    const [x0, y0, x1, y1] = stroke.attributes.d!.match(/[-\d.]+/g)!.map(Number) as [number, number, number, number]
    expect((Math.atan2(y0 - y1, x0 - x1) * 180) / Math.PI).toBeCloseTo(30, 1)
    expect(x1).toBeLessThan(x0)
    expect(textIn(withClass(swivel, 'set-to')[0]!)).toBe('30°')
  })
})
