import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { drawnSheetFor, sheetFor } from '../../src/compile.ts'
import { GRINDER_CAUTIONS } from '../../src/handbook/grinding.ts'
import type { Role } from '../../src/phrase/phrase.ts'
import { number as numberIn, words as wordsIn } from '../../src/phrase/words.ts'
import { printerOf } from '../../src/print/registry.ts'
import { changedSince } from '../../src/sheet/changed/changed.ts'
import { grindSheet } from '../../src/sheet/grind/grind.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { slipsFor } from '../../src/slips-for.ts'
import { drawnExample, drawnSheets, HOSTILE, named } from './drawn.ts'
import { examplePlans } from './examples.ts'
import { type Element, everyIn, parse, textIn, withClass } from './xml.ts'

/** As `textIn` reads a page: how lines break is not compared. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ')
const words = (...of: Parameters<typeof wordsIn>): string => plain(wordsIn(...of))
const number = (...of: Parameters<typeof numberIn>): string => plain(numberIn(...of))

const print = await printerOf('sheet', 'html')
const pageOf = (sheet: Sheet): Element => parse(print(sheet, { inspection: true }), ['style', 'script'])
const named1 = (page: Element, name: string): Element[] => everyIn(page).filter((one) => one.name === name)
const READINGS: ReadonlySet<Role> = new Set<Role>(['mark', 'turns', 'reading', 'take-up'])

/** Whatever a page would ask of anybody. */
const asks = (page: Element): string[] =>
  everyIn(page).flatMap(({ name, attributes }) => [
    ...(['link', 'iframe', 'img', 'object', 'embed', 'base', 'form', 'image'].includes(name) ? [name] : []),
    ...Object.entries(attributes).flatMap(([key, value]) => {
      if (key === 'href' && value.startsWith('#')) return []
      const loads =
        ['src', 'href', 'action', 'srcset', 'data', 'xlink:href', 'style'].includes(key) || key.startsWith('on')
      return loads ? [`${name} ${key}=${value}`] : []
    }),
  ])

describe('the page of a sheet', () => {
  it.each(drawnSheets())(
    '%s: well-formed, names unique, links that lead somewhere, and nothing asked of anybody',
    (_, sheet) => {
      const text = print(sheet, { inspection: true })
      const page = pageOf(sheet)
      const ids = everyIn(page).flatMap(({ attributes }) => attributes.id ?? [])
      expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([])
      const links = named1(page, 'a').map(({ attributes }) => attributes.href!.slice(1))
      expect(links.filter((id) => !ids.includes(id))).toEqual([])
      expect(asks(page)).toEqual([])
      expect(text).not.toMatch(/https?:|\/\/|@import|url\((?!#)/)
      expect(text).not.toMatch(/\b(?:NaN|Infinity|undefined|null)\b/)
      for (const picture of withClass(page, 'picture'))
        expect(named1(picture, 'desc').map(textIn).join('').length).toBeGreaterThan(10)
    },
  )

  it.each(drawnSheets())(
    '%s: every step in its words, every reading of it large, every size of the proof',
    (_, sheet) => {
      const page = pageOf(sheet)
      const steps = new Map(withClass(page, 'step').map((step) => [step.attributes.id, step]))
      for (const step of sheet.steps) {
        const place = (sheet.places ?? []).find(({ from, to }) => from <= step.number && step.number <= to)
        const item = steps.get(`step-${place?.from ?? step.number}`)!
        const { does, effect } = place ?? step
        const shown = textIn(item)
        const large = withClass(item, 'reading').map(textIn)
        // The rows of a table are its cells, what was measured over the reading.
        const inTable = (i: number) => step.tables?.some(({ lines }) => i === lines.from + 1) === true
        const cells = step.tables?.flatMap(({ rows }) => rows) ?? []
        const shownCells = withClass(item, 'rows').flatMap((rows) => named1(rows, 'div').map(textIn))
        expect(shownCells).toEqual(
          cells.map(({ keys, reading }) => words(keys, sheet.units) + words(reading, sheet.units)),
        )
        for (const phrase of [does, effect, ...step.more.filter((_, i) => !inTable(i))]) {
          expect(shown).toContain(words(phrase, sheet.units))
          for (const part of phrase)
            if (typeof part !== 'string' && READINGS.has(part.role)) expect(large).toContain(number(part, sheet.units))
        }
      }
      const told = textIn(page)
      for (const feature of sheet.features) {
        expect(told).toContain(feature.name)
        if (feature.status === 'refused') expect(told).toContain(words(feature.reason, sheet.units))
        else
          for (const line of feature.proof.lines.filter(({ settled }) => !settled))
            expect(told).toContain(`${number(line.low, sheet.units)} to ${number(line.high, sheet.units)}`)
      }
      expect(steps.size).toBeLessThanOrEqual(sheet.steps.length)
      expect(named1(page, 'input').filter(({ attributes }) => attributes.type === 'checkbox')).toHaveLength(steps.size)
    },
  )

  it('has a blank for each size that is measured at a stop', () => {
    const page = pageOf(drawnExample('01-press-screw'))
    expect(withClass(page, 'blank').map(({ attributes }) => attributes['aria-label'])).toEqual([
      'measured: gauge blocks: width, .165 expected',
      'measured: depth micrometer: depth, .054 expected',
      'measured: blade micrometer: bottom diameter, .7665 expected',
      'measured: rule: near edge from end, 1.125 expected',
      'measured: gauge blocks: width, .165 expected',
      'measured: depth micrometer: depth, .072 expected',
      'measured: blade micrometer: bottom diameter, .7305 expected',
      'measured: rule: near edge from end, 1.125 expected',
    ])
  })

  it('names the slide on each dial where one line turns several, and on no other', () => {
    const sheet = drawnExample('19-no-form-tool')
    const page = pageOf(sheet)
    const slides = withClass(page, 'step').map((step) => ({
      step,
      named: withClass(step, 'slide').map(textIn),
      dials: withClass(step, 'dials')
        .flatMap(everyIn)
        .filter(({ name }) => name === 'svg'),
    }))
    const station = slides.find(({ step }) => step.attributes.id === 'step-16')!
    expect(station.named).toEqual(['COMPOUND', 'CROSS-FEED', 'CROSS-FEED', 'CROSS-FEED', 'CROSS-FEED'])
    expect(station.dials).toHaveLength(5)
    expect(slides.filter(({ named, dials }) => dials.length === 1 && named.length > 0)).toEqual([])
  })

  it('runs its own script and no other', () => {
    const page = pageOf(drawnExample('01-press-screw'))
    const [script] = named1(page, 'script')
    const sum = createHash('sha256').update(textIn(script!)).digest('base64')
    const policy = named1(page, 'meta').find(({ attributes }) => attributes['http-equiv'])!.attributes.content
    expect(policy).toBe(
      `default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${sum}'; base-uri 'none'; form-action 'none'`,
    )
    expect(() => new Function(textIn(script!))).not.toThrow()
  })

  it('is whole without the pictures, and without what is left open', () => {
    const [, plan] = examplePlans()[0]!
    const page = pageOf(sheetFor(plan))
    expect(withClass(page, 'part')).toEqual([])
    expect(withClass(page, 'step').length).toBeGreaterThan(10)
  })

  it('has what is asked for besides: grinding, mistakes, the table for the bench, what changed', () => {
    const [, plan] = examplePlans().find(([name]) => name === '01-press-screw.yaml')!
    const sheet: Sheet = {
      ...drawnSheetFor(plan),
      grind: grindSheet(plan, GRINDER_CAUTIONS),
      slips: slipsFor(plan),
      changed: changedSince({}, {}),
    }
    const page = pageOf(sheet)
    const told = textIn(page)
    for (const tool of sheet.grind!.tools)
      for (const phrase of tool.order) expect(told).toContain(words(phrase, sheet.units))
    for (const { lines } of sheet.slips!)
      for (const { shows, mistake } of lines) {
        expect(told).toContain(words(shows, sheet.units))
        expect(told).toContain(mistake)
      }
    expect(named1(page, 'h2').map(textIn)).toEqual(
      expect.arrayContaining(['Proof', 'Worked out from', 'Inspection', 'Tools to grind', 'Common mistakes']),
    )
    expect(told).toContain('Nothing: every step, reading and size is as it was.')
    expect(asks(page)).toEqual([])
  })
})

describe('a name that is meant to do harm', () => {
  const plain = pageOf(named('plain'))
  const shape = (page: Element): string[] =>
    [
      ...new Set(
        everyIn(page).flatMap(({ name, attributes }) => [
          name,
          ...Object.keys(attributes).map((key) => `${name} ${key}`),
        ]),
      ),
    ].sort()

  it.each(HOSTILE)('%s stays text', (name) => {
    const page = pageOf(named(name))
    expect(shape(page)).toEqual(shape(plain))
    expect(named1(page, 'script').map(textIn)).toEqual(named1(plain, 'script').map(textIn))
    expect(named1(page, 'style')).toHaveLength(1)
    expect(asks(page)).toEqual([])
    expect(print(named(name))).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/)
    const shown = name.replace(
      /[\u202a-\u202e\u2066-\u2069]/g,
      (sign) => `[U+${sign.charCodeAt(0).toString(16).toUpperCase()}]`,
    )
    expect(textIn(named1(page, 'h1')[0]!)).toBe(shown)
  })

  it('nor is the style sheet ended by a title, or anything in it', () => {
    const style = (name: string): string => textIn(named1(pageOf(named(name)), 'style')[0]!)
    const without = (text: string): string => text.replace(/content:"(?:[A-Za-z0-9 ]|\\[0-9a-f]+ )*"/g, 'content:""')
    for (const name of HOSTILE) expect(without(style(name))).toBe(without(style('plain')))
    expect(without(style('plain'))).toContain('@top-left{content:""')
  })
})
