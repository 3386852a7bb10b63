import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, drawnSheetFor, sheetFor } from '../../src/compile.ts'
import { printerOf } from '../../src/print/registry.ts'
import { hidden } from '../../src/sheet/hidden.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { jobs } from '../properties/jobs.ts'
import { runs } from '../runs.ts'
import { drawnExample, drawnSheets, HOSTILE, named } from './drawn.ts'
import { examplePlans } from './examples.ts'
import { classesOf, type Element, everyIn, parse, textIn, withClass } from './xml.ts'

const print = await printerOf('sheet', 'svg')
const documentOf = (sheet: Sheet): Element => parse(print(sheet))
const pictures = (sheet: Sheet): Element[] => withClass(documentOf(sheet), 'picture')
const ofKind = (sheet: Sheet, kind: string): Element[] =>
  pictures(sheet).filter((picture) => classesOf(picture).includes(kind))
const told = (picture: Element, name: 'title' | 'desc'): string =>
  textIn(picture.children.find((child): child is Element => typeof child !== 'string' && child.name === name)!)

/** What is wrong with a document of pictures, whatever it shows. */
const wrongIn = (sheet: Sheet): string[] => {
  const text = print(sheet)
  const all = everyIn(parse(text))
  const ids = all.flatMap(({ attributes }) => attributes.id ?? [])
  const small = all.filter(({ name, attributes }) => name === 'text' && !(Number(attributes['font-size']) >= 3.5))
  return [
    ...(/\b(?:NaN|Infinity|undefined|null)\b/.test(text) ? ['a number that is none'] : []),
    ...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `${id} is there twice`),
    ...small.map((one) => `letters under 2.5 mm: ${textIn(one)}`),
    ...pictures(sheet).flatMap((picture) => [
      ...(told(picture, 'title').trim() === '' ? ['no title'] : []),
      ...(told(picture, 'desc').trim() === '' ? ['no words'] : []),
      ...picture.attributes['aria-labelledby']!.split(' ').filter((id) => !ids.includes(id)),
      ...outside(picture),
    ]),
  ]
}

/** Letters that stand beyond the edge of their picture: no letter is narrower than a quarter of its height. */
const outside = (picture: Element): string[] => {
  const [, , width, height] = picture.attributes.viewBox!.split(' ').map(Number) as [number, number, number, number]
  return everyIn(picture)
    .filter(({ name, attributes }) => name === 'text' && attributes.transform === undefined)
    .filter((text) => {
      const [x, y, size] = ['x', 'y', 'font-size'].map((key) => Number(text.attributes[key])) as [
        number,
        number,
        number,
      ]
      const long = textIn(text).length * size * 0.45
      const start = { middle: x - long / 2, end: x - long }[text.attributes['text-anchor'] ?? ''] ?? x
      return start < 0 || start + long > width + 0.5 || y < 2 || y > height
    })
    .map((text) => `beyond the edge of ${picture.attributes.id}: ${textIn(text)}`)
}

describe('the drawings of a sheet', () => {
  it.each(drawnSheets())('%s: well-formed, every one with a title and words, nothing small or cut off', (_, sheet) => {
    expect(wrongIn(sheet)).toEqual([])
    const planned = sheet.features.filter(({ status }) => status === 'planned').length
    expect(ofKind(sheet, 'part')).toHaveLength(1)
    expect(ofKind(sheet, 'form')).toHaveLength(planned)
  })

  it('are gray at the most: no color but black, white and grays', () => {
    for (const [, sheet] of drawnSheets()) {
      const colors = everyIn(documentOf(sheet)).flatMap(({ attributes }) => [attributes.fill, attributes.stroke])
      const known = colors.filter((color) => color !== undefined && color !== 'none' && !color.startsWith('url(#'))
      expect(known.filter((color) => !/^#([0-9a-f]{1,2})\1\1$/.test(color!))).toEqual([])
    }
  })

  it('of random jobs are well-formed too', { timeout: 240_000 }, () => {
    fc.assert(
      fc.property(jobs, ({ text }) => {
        const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
        expect(wrongIn(drawnSheetFor(plan!))).toEqual([])
      }),
      { numRuns: runs(20), seed: 19_510_403 },
    )
  })

  it('leave out what there is no data for', () => {
    const [, plan] = examplePlans()[0]!
    expect(ofKind(sheetFor(plan), 'part')).toEqual([])
    expect(ofKind(sheetFor(plan), 'form')).toEqual([])
    expect(ofKind(sheetFor(plan), 'dial').length).toBeGreaterThan(0)
  })

  it('show nothing of what is left open', () => {
    const open = hidden(drawnExample('09-swung-compound'), new Set(['mark', 'reading', 'turns', 'angle'] as const))
    expect(pictures(open)).toEqual([])
    expect(print(open)).not.toMatch(/NaN/)
  })

  it('have no form of a feature that is refused', () => {
    const refused = drawnSheets().filter(([, { features }]) => features.some(({ status }) => status === 'refused'))
    expect(refused.length).toBeGreaterThan(0)
    for (const [, sheet] of refused)
      for (const { index, status } of sheet.features)
        expect(ofKind(sheet, 'form').some(({ attributes }) => attributes.id === `form-${index + 1}`)).toBe(
          status === 'planned',
        )
  })
})

describe('a name that is meant to do harm', () => {
  it.each(HOSTILE)('%s stays text', (name) => {
    const sheet = named(name)
    expect(wrongIn(sheet)).toEqual([])
    const names = (of: Sheet): string[] => [...new Set(everyIn(documentOf(of)).map((one) => one.name))].sort()
    const keys = (of: Sheet): string[] =>
      [...new Set(everyIn(documentOf(of)).flatMap(({ attributes }) => Object.keys(attributes)))].sort()
    expect(names(sheet)).toEqual(names(drawnExample('01-press-screw')))
    expect(keys(sheet)).toEqual(keys(drawnExample('01-press-screw')))
    expect(print(sheet)).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/)
    const shown = name.replace(
      /[\u202a-\u202e\u2066-\u2069]/g,
      (sign) => `[U+${sign.charCodeAt(0).toString(16).toUpperCase()}]`,
    )
    expect(told(ofKind(sheet, 'part')[0]!, 'title')).toBe(`${shown}: the part as it is held`)
  })
})
