import { describe, expect, it } from 'vitest'
import { formatsOf, printerOf } from '../../src/print/registry.ts'
import { sheetAfter } from '../../src/sheet-after.ts'
import { INCH } from '../../src/units/length.ts'
import { examplePlans } from './examples.ts'
import { type Element, everyIn, parse, textIn, withClass } from './xml.ts'

const [, plan] = examplePlans().find(([name]) => name.startsWith('01-'))!
const [html, svg] = [await printerOf('finish', 'html'), await printerOf('finish', 'svg')]
const measured = (bottom: number) => ({
  bottom: Math.round(bottom * INCH),
  width: Math.round(0.166 * INCH),
  outside: null,
  again: false,
})
const sheet = sheetAfter(plan, 0, measured(0.7685), undefined, true)
const page = parse(html(sheet), ['style', 'script'])
const byId = (of: Element, id: string): Element => everyIn(of).find(({ attributes }) => attributes.id === id)!

describe('what remains of the press screw after .7685 was measured, as a page and as drawings', () => {
  it('is offered in both', () => {
    expect(formatsOf('finish')).toEqual(expect.arrayContaining(['html', 'svg']))
  })

  it('has the steps that are left, and ticks of its own', () => {
    const numbers = withClass(page, 'number')
      .map(textIn)
      .filter((text) => text !== '1')
    expect(numbers).toEqual(Array.from({ length: 12 }, (_, i) => String(21 + i)))
    const kept = everyIn(page).find(({ name }) => name === 'body')!.attributes['data-sheet']
    expect(kept).toBe(`goes on from sheet ${sheet.identity} Cider press screw: what remains`)
  })

  it('has the dial at what is finished to now: 73 of 100 is 262.8 degrees', () => {
    const dial = everyIn(byId(page, 'step-25')).find(({ name }) => name === 'svg')!
    expect(dial.attributes['aria-label']).toContain('mark 73 of 100')
    expect(everyIn(dial).some(({ attributes }) => attributes.transform === 'rotate(262.8 28 33)')).toBe(true)
    const back = everyIn(byId(page, 'step-21')).find(({ name }) => name === 'svg')!
    expect(back.attributes['aria-label']).toContain('turned the way that the numbers rise')
  })

  it('draws the passes that are left, on the part as it stands', () => {
    for (const document of [page, parse(svg(sheet))]) {
      const passes = withClass(byId(document, 'form-1'), 'pass')
      expect(passes.map(({ attributes }) => attributes['data-step'])).toEqual(['25', '26'])
    }
  })

  it('of a part that is past its limits has a reason, and no step', () => {
    const scrap = parse(html(sheetAfter(plan, 0, measured(0.72), undefined, true)), ['style', 'script'])
    expect(textIn(scrap)).toContain('REFUSED')
    expect(withClass(scrap, 'step')).toEqual([])
  })
})
